package drawing

func (rd *reading) csv(data []byte, d *Drawing) {}
func (rd *reading) svg(data []byte, d *Drawing) {}
