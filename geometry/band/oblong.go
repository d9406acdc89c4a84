package band

// Oblong gives the rectangle along the roll about a piece: what is cut for it when
// its ends are cut straight.
func (p *Piece) Oblong() *Piece {
	return &Piece{
		Outer: Ring{{p.MinX, p.MinY}, {p.MaxX, p.MinY}, {p.MaxX, p.MaxY}, {p.MinX, p.MaxY}},
		MinX:  p.MinX, MaxX: p.MaxX, MinY: p.MinY, MaxY: p.MaxY,
	}
}
