package book

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"brazebooth/calc"
)

// Any packed bytes unpack to themselves.
func FuzzPack(f *testing.F) {
	r := rand.New(rand.NewPCG(7, 1951))
	noise := make([]byte, 100000)
	for i := range noise {
		noise[i] = byte(r.Uint32())
	}
	for _, b := range [][]byte{nil, []byte("a"), []byte("abcdefgh"), usual, usual[len(usual)-9:], noise,
		bytes.Repeat([]byte{0xff}, 70000), []byte(strings.Repeat("tank lid", 99)), append(bytes.Clone(noise[:40000]),
			noise[:40000]...)} {
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		got, err := unpack(pack(body))
		if err != nil || !bytes.Equal(got, body) {
			t.Errorf("%d bytes came back as %d, %v", len(body), len(got), err)
		}
	})
}

// Bodies that an earlier program packed without the preset dictionary can still be read.
func TestUnpackOld(t *testing.T) {
	body := []byte(`{"name":"dee"}`)
	for level := flate.HuffmanOnly; level <= flate.BestCompression; level++ {
		var out bytes.Buffer
		w, err := flate.NewWriter(&out, level)
		noErr(t, err)
		_, err = w.Write(body)
		noErr(t, err)
		noErr(t, w.Close())
		if got, err := unpack(out.Bytes()); err != nil || !bytes.Equal(got, body) {
			t.Errorf("level %d: %q, %v", level, got, err)
		}
	}
}

// The preset dictionary of released books must never change: their bodies could not be unpacked any more.
func TestUsualStays(t *testing.T) {
	if got := fmt.Sprintf("%x",
		sha256.Sum256(usual)); got != "53a63ee85ec65f0184d6b9a5689b8d6f42fc6e7812537a736a381fa4c3625500" {
		t.Errorf("usual1.txt has changed to %s: add another one in its place", got)
	}
}

// Damaged bytes give an error or other bytes, never more than largestBody.
func FuzzUnpack(f *testing.F) {
	f.Add(pack([]byte(`{"name":"dee"}`)))
	f.Add([]byte(withUsual))
	f.Add([]byte(withFixedCodes))
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, packed []byte) {
		if b, err := unpack(packed); err == nil && len(b) > largestBody {
			t.Errorf("%d bytes", len(b))
		}
	})
}

// The packed size of a dozen cards.
func BenchmarkPack(b *testing.B) {
	var cards [][]byte
	for _, metal := range []string{"galvanized", "stainless-304", "mild-steel"} {
		for _, joint := range []string{"lap", "tee"} {
			for _, mode := range []string{"dip", "pulsed"} {
				body, err := compactJSON(someCard(b, "tank lid", calc.Job{Metal: metal, Joint: joint, Mode: mode,
					Gauge: 18}))
				noErr(b, err)
				cards = append(cards, body)
			}
		}
	}
	size := 0
	for b.Loop() {
		size = 0
		for _, c := range cards {
			size += len(pack(c))
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*len(cards)), "us/card")
	b.ReportMetric(float64(size)/float64(len(cards)), "bytes/card")
}
