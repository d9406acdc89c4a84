package drawing

func (rd *reading) csv(data []byte, d *Drawing) {}
