package band

// Slip is the width in µm below which a piece is no strip but a slip. None is cut
// on purpose, whatever the narrowest strip asked for, and a piece that leaves less
// of the roll's width than that takes the whole width.
const Slip = 50
