package tui

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"io"
	"regexp"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/sixel"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// paper records what is sent to a terminal.
type paper struct {
	sync.Mutex
	b bytes.Buffer
}

func (p *paper) Write(b []byte) (int, error) {
	p.Lock()
	defer p.Unlock()
	return p.b.Write(b)
}

// since waits a second and returns what was sent since the last call.
func (p *paper) since() string {
	time.Sleep(time.Second)
	synctest.Wait()
	p.Lock()
	defer p.Unlock()
	defer p.b.Reset()
	return p.b.String()
}

// Answers of terminals, as they arrive.
const (
	kittyAnswers = "\x1b_Gi=31;OK\x1b\\\x1b[?62;22c\x1b[6;20;10t"
	sixelAnswers = "\x1b[?62;4;22c\x1b[6;20;10t"
	plainAnswers = "\x1b[?62;22c\x1b[6;20;10t"
)

var (
	sentKitty = regexp.MustCompile(`\x1b_G[^;]*a=T[^;]*;`)
	sentSixel = regexp.MustCompile(`(?s)\x1b7\x1b\[\d+;\d+H\x1bP0;1q(.*?)\x1b\\\x1b8`)
)

// A terminal that says that it shows pictures is sent one, once, when its page is open, and none while another screen
// is on top. A terminal that does not say so, or was not asked, is sent none, and the user is told how to switch them
// on.
func TestPicturesGoWhereTheyAreShown(t *testing.T) {
	for _, x := range []struct {
		name, answers string
		asked         bool
		sent          *regexp.Regexp
		away          string
	}{
		{"kitty", kittyAnswers, true, sentKitty, "\x1b_Ga=d,d=I,i=1,q=2\x1b\\"},
		{"sixel", sixelAnswers, true, sentSixel, ansi.EraseEntireScreen},
		{"neither", plainAnswers, true, nil, ""},
		{"not asked", kittyAnswers, false, nil, ""},
	} {
		t.Run(x.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				p, out, line := onLine(t, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20}, Window: coarse,
					Pictures: x.asked})
				if asks := strings.Contains(out.since(), askPictures); asks != x.asked {
					t.Errorf("it is asked for pictures: %v", asks)
				}
				_, _ = io.WriteString(line, x.answers)
				out.since()
				press := func(name string) string { p.Send(keyPress(name)); return out.since() }
				if press("x"); x.sent == nil {
					if said := press("v"); !strings.Contains(said, "--pictures") || strings.Contains(said, "\x1bP") {
						t.Errorf("v without pictures sends %q", said)
					}
					return
				}
				if n := len(x.sent.FindAllString(press("v"), -1)); n != 1 {
					t.Errorf("v sends %d pictures", n)
				}
				if again := press("u"); len(x.sent.FindAllString(again, -1)) != 1 {
					t.Errorf("other units draw %d pictures anew", len(x.sent.FindAllString(again, -1)))
				}
				help := press("f1")
				if !strings.Contains(help, x.away) || x.sent.MatchString(help) {
					t.Error("the picture lies over the help")
				}
				if back := press("esc"); len(x.sent.FindAllString(back, -1)) != 1 {
					t.Error("the picture does not come back")
				}
				if left := press("esc"); !strings.Contains(left, x.away) || x.sent.MatchString(left) {
					t.Error("the picture stays when its page is left")
				}
				if more := press("esc"); strings.Contains(more, x.away) {
					t.Error("a picture that is gone is taken away again")
				}
			})
		})
	}
}

// The sent data decode to a picture as large as the room for it: of the map, the cross-section and the heat.
func TestPicturesFitTheirRoom(t *testing.T) {
	for _, keys := range deep.Of(t, [][]string{{"x"}, {"m"}, {"t"}}, 1) {
		synctest.Test(t, func(t *testing.T) {
			p, out, line := onLine(t, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20}, Window: coarse,
				Gap: followed, Pictures: true})
			_, _ = io.WriteString(line, sixelAnswers)
			out.since()
			for _, k := range append(keys, "v") {
				p.Send(keyPress(k))
				if k != "v" {
					out.since()
				}
			}
			m := sentSixel.FindStringSubmatch(out.since())
			if m == nil {
				t.Fatalf("%v: no picture", keys)
			}
			img, err := new(sixel.Decoder).Decode(strings.NewReader(m[1]))
			if err != nil {
				t.Fatal(err)
			}
			if size := img.Bounds().Size(); size.X > 780 || size.Y > 22*20 || size.X < 500 {
				t.Errorf("%v: a picture of %v", keys, size)
			}
		})
	}
}

// onLine shows the screens in a terminal of 80 by 24 whose answers are written to line.
func onLine(t *testing.T, o Options) (*tea.Program, *paper, io.Writer) {
	t.Helper()
	in, line := io.Pipe()
	out := new(paper)
	o.Solve, o.Profile, o.Env = solved, colorprofile.ANSI256, []string{"TERM=xterm-256color"}
	ctx, cancel := context.WithCancel(context.Background())
	p := tea.NewProgram(New(o), append(programOptions(ctx, o, in, out), tea.WithWindowSize(80, 24),
		tea.WithoutSignalHandler())...)
	done := make(chan struct{})
	go func() { _, _ = p.Run(); close(done) }()
	t.Cleanup(func() { cancel(); _ = line.Close(); <-done })
	return p, out, line
}

// A picture that is no PNG is an error and not a panic.
func TestBadPNGIsAnError(t *testing.T) {
	for _, p := range []pictures{{kitty: true}, {sixel: true}} {
		p.cell.Width, p.cell.Height = 10, 20
		if _, err := p.encoded([]byte("no picture")); err == nil {
			t.Error("no picture is encoded")
		}
		var b bytes.Buffer
		if err := png.Encode(&b, image.NewRGBA(image.Rect(0, 0, 30, 20))); err != nil {
			t.Fatal(err)
		}
		if text, err := p.encoded(b.Bytes()); err != nil || len(text) < 20 {
			t.Errorf("%q, %v", text, err)
		}
	}
}
