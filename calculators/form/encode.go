//go:build !wasm

package form

// Encode writes settings in the form that Configure reads.
func (s Settings) Encode() string {
	var b []byte
	b = field(b, "decimal", string(s.Style.Decimal))
	b = field(b, "measures", s.Style.Measures)
	for _, scale := range s.Scales {
		b = field(b, "scale", number(scale.To)+" "+number(scale.Step))
	}
	for _, body := range s.Bodies {
		b = field(b, "body", body.encode())
	}
	for _, w := range s.Working {
		b = field(b, "working", string(w.Of)+" "+number(w.Low)+" "+number(w.High)+" "+w.For)
	}
	for _, h := range s.Hazards {
		b = field(b, "hazard", h.ID+" "+h.Words)
	}
	if s.Words != nil {
		b = field(b, "words", s.Words.Reactor().Encode())
	}
	if s.Table != nil {
		b = field(b, "table", s.Table.Encode())
	}
	return string(b)
}

// encode writes a body as a form within the settings.
func (body Body) encode() string {
	var b []byte
	b = field(b, "id", body.ID)
	b = field(b, "name", body.Name)
	b = field(b, "cone", body.Cone)
	return string(field(b, "shrinkage", number(body.Shrinkage)))
}
