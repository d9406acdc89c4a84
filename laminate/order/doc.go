// Package order sums up what a plan takes: the roll length of each fabric and
// width, resin and hardener with their batches, what is used up under the bag,
// sheets of core; what of it has to be bought; and what each ply weighs dry.
//
// # Words
//
//	used, net    what the plan takes: of cloth, what is cut off the rolls, from
//	             the free end to the last cut
//	on hand      a roll with a stated length, or what a job says is on the shelf:
//	             it need not be bought
//	spare        a share of what is bought, added before rounding up to what is
//	             sold
//	margin       how far a consumable reaches past the net edge; below zero it
//	             stops short of it
//	lane         a length of roll laid beside others of its width
//
// # Resin
//
// The part holds resin on the whole blank, which is laid and infused, although
// only the net part is weighed in the end. Each consumable holds its uptake in
// g/m² on its own area, a core on both faces, then come feed lines and pot, and
// the spare of all that. Resin (A) and hardener (B) follow from the mix; batches
// are equal and no larger than stated.
//
// # Consumables
//
// Areas and lengths come from the real outline. Peel ply, flow media, film and
// tape are laid over openings of the part as well: an opening is not bagged on
// its own. Corners are taken as mitred, so that tape round a rectangle of L by W
// with a margin m measures 2(L+W) + 8m; n pleats of height p in the bag add 2np
// to it (geometry). The bag itself grows by as much in girth: its margin by np/4.
// Goods of a roll width are laid in lanes, in few of them rather than in many
// unless many take less than three quarters of the roll.
//
// # What it does not do
//
// It lays out no cloth and judges nothing. What is not stated, and not a known
// custom of the trade, is not made up: it is missing from the sum, and Missing
// says so. Nothing that a function is given is altered.
package order
