package sheet

// Cautions are what everyone at the tool should have read, each with a heading.
// After public guidance: HSE RR79 and EU-OSHA on epoxy and skin, OSHA Technical
// Manual III-1 on dust of fibres; that hot resin runs away and that glass
// implodes stands in makers' and laboratories' safety pages.
var Cautions = [][2]string{
	{"What these figures are", Caution},
	{"Skin", "Uncured epoxy and its hardener can make the skin allergic for good. Let none of it touch the skin; wear nitrile gloves and change them often, and wash with soap, not with solvent."},
	{"Heat", "Mixed resin heats itself, the faster the more of it stands in one pot. Mix small batches in shallow trays, watch what is left over until it has gone off and cooled, and never throw it away uncured."},
	{"Dust", "Dust of cut and sanded fibre irritates skin, eyes and lungs, and dust of carbon conducts: draw it off at the tool, wear a mask, and keep it out of sockets, motors and switchgear."},
	{"Vacuum", "A vessel under vacuum can burst inwards. Use a resin trap that is rated for full vacuum, look it over before each use, shield it, and put it between the part and the pump."},
	{"Cutting", "Check the width of the roll and which face is up before the first cut; weigh the cut plies against the kit cards before the first is laid. What is cut wrong cannot be mended."},
}
