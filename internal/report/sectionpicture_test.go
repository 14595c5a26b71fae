package report

import (
	"bytes"
	"image/color"
	"image/png"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/joint"
	"brazebooth/internal/quantity"
)

// The picture shows the same as the drawing in characters: each part of each joint, and no part that the joint does not
// have.
func TestJointPictureShowsEveryPart(t *testing.T) {
	deep.Turn(t)
	for _, j := range []calc.Job{
		{Metal: "galvanized", Gauge: 18, Joint: "lap"},
		{Metal: "mild-steel", Thickness: calc.Some(2), Thickness2: calc.Some(4), Metal2: "mild-steel", Joint: "tee"},
		{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "butt", Gap: calc.Some(1), Backing: "copper-bar"},
		{Metal: "galvanized", Thickness: calc.Some(1), Joint: "corner"},
		{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "edge"},
	} {
		c, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		b, err := Joint{Card: &c, Units: quantity.Metric}.PNG(60)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		seen := map[color.RGBA]int{}
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				r, g, b, _ := img.At(x, y).RGBA()
				seen[color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), 255}]++
			}
		}
		lines, _ := Drawing(&c.Section, 120, 60)
		text := bytes.Join(asBytes(lines), nil)
		for part := joint.First; part < joint.Parts; part++ {
			f := sectionFills[part]
			r, g, b, _ := f.Fill.RGBA()
			n := seen[color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), 255}]
			if drawn := bytes.IndexByte(text, inks[part]) >= 0; drawn != (n > 20) {
				t.Errorf("%s %s: %s in characters: %v, and %d dots of the picture", j.Metal, j.Joint, f.Text, drawn, n)
			}
		}
	}
}

func asBytes(lines []string) (b [][]byte) {
	for _, l := range lines {
		b = append(b, []byte(l))
	}
	return b
}
