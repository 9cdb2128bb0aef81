package photo

import (
	"bytes"
	"encoding/base64"
	"errors"
	"strings"
)

// Embedded returns a picture in base64, as one stands within a drawing, without what
// a camera wrote into it, with its kind in front: "png;base64,…". The error is
// ErrDamaged, or says that the picture does not stand upright or is of another kind.
func Embedded(text string) (string, error) {
	text = strings.Join(strings.Fields(text), "")
	data, err := base64.StdEncoding.DecodeString(text)
	if err != nil {
		return "", ErrDamaged
	}
	kind := KindOf(data)
	if kind != "png" && kind != "jpeg" && kind != "gif" {
		return "", errors.New("of a kind that many browsers cannot show")
	}
	d, err := open(kind, data)
	switch {
	case err != nil:
		return "", err
	case d.up != 1:
		return "", errors.New("not upright")
	case d.whole == nil:
		return "", errors.New("in inks for print")
	case bytes.Equal(d.whole, data):
		return kind + ";base64," + text, nil
	}
	return kind + ";base64," + base64.StdEncoding.EncodeToString(d.whole), nil
}
