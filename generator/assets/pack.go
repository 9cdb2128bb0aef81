package assets

import (
	"bytes"
	"compress/gzip"
	"fmt"
)

// pack gzips data as small as it goes. The header holds neither name nor time,
// so that the same data gives the same bytes.
func pack(data []byte) ([]byte, error) {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, fmt.Errorf("packing: %w", err)
	}
	if _, err := w.Write(data); err != nil {
		return nil, fmt.Errorf("packing: %w", err)
	}
	if err := w.Close(); err != nil {
		return nil, fmt.Errorf("packing: %w", err)
	}
	return out.Bytes(), nil
}
