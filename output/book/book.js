"use strict";
(() => {
  const root = document.documentElement, main = document.querySelector("main");
  const pages = [...main.querySelectorAll(".page")];
  const boxes = [...main.querySelectorAll("input[type=checkbox]:not([value])")];

  // One page at a time.
  let shown = 0;
  const indexOf = id => pages.findIndex(p => p.id === id);
  function show(index, focus) {
    if (index < 0 || index >= pages.length) return;
    shown = index;
    // Unseen pages are still found by the browser's own search.
    pages.forEach((p, i) => { if (i === index) p.removeAttribute("hidden"); else p.setAttribute("hidden", "until-found"); });
    root.classList.remove("early");
    window.scrollTo(0, 0);
    if (focus) pages[index].querySelector("h2").focus({ preventScroll: true });
  }
  function open(index) {
    if (index < 0 || index >= pages.length) return;
    location.hash = pages[index].id;
  }
  addEventListener("hashchange", () => show(Math.max(0, indexOf(decodeURIComponent(location.hash.slice(1)))), true));
  addEventListener("keydown", e => {
    if (e.altKey || e.ctrlKey || e.metaKey || e.shiftKey) return;
    if (e.key === "ArrowRight" || e.key === "PageDown") open(shown + 1);
    else if (e.key === "ArrowLeft" || e.key === "PageUp") open(shown - 1);
    else if (e.key === "Home") open(0);
    else return;
    e.preventDefault();
  });
  pages.forEach((p, i) => p.addEventListener("beforematch", () => open(i)));
  show(Math.max(0, indexOf(decodeURIComponent(location.hash.slice(1)))), false);

  // Ticks, kept on the device under the plan's hash.
  const key = "stripwright " + root.dataset.plan;
  function read() {
    try { return new Set(JSON.parse(localStorage.getItem(key) || "[]")); } catch { return null; }
  }
  function write(set) {
    try { localStorage.setItem(key, JSON.stringify([...set])); return true; } catch { return false; }
  }
  const stored = read();
  const ticked = stored || new Set();
  if (!stored || !write(ticked)) document.getElementById("nostore").hidden = false;
  function tell() {
    for (const out of document.querySelectorAll("[data-done]")) {
      const of = [...document.getElementById(out.dataset.done).querySelectorAll("input[type=checkbox]")];
      const n = of.filter(b => b.checked).length;
      out.textContent = n === of.length ? "✓ done" : n ? n + " of " + of.length + " ticked" : "";
    }
  }
  for (const box of boxes) {
    box.checked = ticked.has(box.name);
    box.addEventListener("change", () => {
      if (box.checked) ticked.add(box.name); else ticked.delete(box.name);
      if (!write(ticked)) document.getElementById("nostore").hidden = false;
      tell();
    });
  }
  document.getElementById("clear-ticks").addEventListener("click", () => {
    if (!confirm("Clear all ticks of this plan?")) return;
    ticked.clear();
    write(ticked);
    boxes.forEach(b => { b.checked = false; });
    tell();
  });
  tell();

  // Joints through the thickness: the plies switched on, and their worst pair.
  const switches = [...document.querySelectorAll("#switches input")];
  const rows = [...document.querySelectorAll("#pairs tbody tr")];
  const through = document.getElementById("through");
  function mark(row) {
    for (const svg of through.querySelectorAll("svg.through")) {
      const g = svg.querySelector(".worst"), text = g.querySelector("text"), view = svg.viewBox.baseVal;
      g.classList.toggle("off", !row);
      if (!row) continue;
      const x = +row.dataset.x, y = +row.dataset.y;
      g.setAttribute("transform", "translate(" + x + " " + y + ")");
      text.textContent = row.cells[0].textContent;
      const left = x < view.x + 260, right = x > view.x + view.width - 260;
      text.setAttribute("text-anchor", left ? "start" : right ? "end" : "middle");
      text.setAttribute("x", left ? -20 : right ? 20 : 0);
      text.setAttribute("y", y < view.y + 80 ? 58 : -40);
    }
  }
  function choose() {
    const on = new Set(switches.filter(s => s.checked).map(s => s.value));
    for (const line of through.querySelectorAll("[data-ply]")) line.classList.toggle("off", !on.has(line.dataset.ply));
    let worst = null;
    for (const row of rows) {
      const counts = on.has(row.dataset.a) && on.has(row.dataset.b);
      row.hidden = !counts;
      if (counts && (!worst || +row.dataset.um < +worst.dataset.um)) worst = row;
    }
    mark(worst);
    const out = document.getElementById("worst");
    out.textContent = worst ? worst.cells[0].textContent : on.size ? "none of the plies shown" : "no ply is shown";
  }
  switches.forEach(s => s.addEventListener("change", choose));
  for (const button of document.querySelectorAll("#switches button")) {
    button.addEventListener("click", () => {
      switches.forEach(s => { s.checked = button.dataset.all === "1"; });
      choose();
    });
  }
  if (switches.some(s => !s.checked)) choose();
})();
