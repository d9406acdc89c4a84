"""Measures templates on the print: outlines against plan.json."""


def check(path, plan, faults):
    pass
