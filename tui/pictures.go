package tui

import (
	"bytes"
	"image/png"
	"slices"
	"strconv"
	"time"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
	"github.com/charmbracelet/x/ansi/sixel"
)

// pictures is what the terminal can show beside characters, as it answered, and the picture it shows now.
type pictures struct {
	asked        bool
	kitty, sixel bool
	cell         uv.CellSizeEvent // px
	now          onScreen
}

// onScreen is a picture in its place. The zero onScreen is none.
type onScreen struct {
	page *picturePage
	of   pictureOf
	x, y int
}

// askPictures asks whether the terminal shows pictures: by its attributes (4 is Sixel), by a query of the Kitty
// graphics protocol, and for the size of a cell in px (XTWINOPS). A terminal that does not answer shows none.
var askPictures = ansi.KittyGraphics([]byte("AAAA"), "i=31", "s=1", "v=1", "a=q", "t=d", "f=24") +
	ansi.RequestPrimaryDeviceAttributes + ansi.WindowOp(16)

// answered handles an answer of the terminal.
func (p *pictures) answered(msg tea.Msg) {
	switch msg := msg.(type) {
	case uv.KittyGraphicsEvent:
		p.kitty = p.kitty || string(msg.Payload) == "OK"
	case uv.PrimaryDeviceAttributesEvent:
		p.sixel = p.sixel || slices.Contains(msg, 4)
	case uv.CellSizeEvent:
		p.cell = msg
	}
}

// can reports whether pictures are shown here.
func (p *pictures) can() bool {
	return p.asked && (p.kitty || p.sixel) && p.cell.Width > 0 && p.cell.Height > 0
}

// encoded is a PNG in the form that the terminal expects at its cursor.
func (p *pictures) encoded(b []byte) (string, error) {
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		return "", err
	}
	var out bytes.Buffer
	if p.kitty {
		size := img.Bounds().Size()
		err = kitty.EncodeGraphics(&out, img, &kitty.Options{Action: kitty.TransmitAndPut, Format: kitty.PNG,
			Transmission: kitty.Direct, Chunk: true, Quiet: 2, ID: pictureID, DoNotMoveCursor: true,
			Columns: (size.X + p.cell.Width - 1) / p.cell.Width, Rows: (size.Y + p.cell.Height - 1) / p.cell.Height})
		return out.String(), err
	}
	if err = new(sixel.Encoder).Encode(&out, img); err != nil {
		return "", err
	}
	return ansi.SixelGraphics(0, 1, 0, out.Bytes()), nil
}

// pictureID is the id of the only picture in the Kitty protocol.
const pictureID = 1

// settlePicture makes the terminal show the picture of the screen on top. The picture is drawn and placed when its page
// is opened, and removed when the page is left or covered by another screen.
func (m *root) settlePicture() tea.Cmd {
	var want onScreen
	var drawn tea.Cmd
	if p, ok := m.front().(*picturePage); ok {
		if of := p.wanted(m); p.ready(of) {
			want = onScreen{p, of, m.margin(), m.above}
		} else {
			drawn = p.make(m)
		}
	}
	was := m.pics.now
	if want == was {
		return drawn
	}
	m.pics.now = want
	var away, place tea.Cmd
	switch {
	case was == onScreen{}:
	case m.pics.kitty:
		away = tea.Raw(ansi.KittyGraphics(nil, "a=d", "d=I", "i="+strconv.Itoa(pictureID), "q=2"))
	default:
		away = tea.ClearScreen
	}
	if want != (onScreen{}) { // only after the frame is drawn whose blank cells it covers
		place = tea.Tick(frameDrawn, func(time.Time) tea.Msg { return pictureDue(want) })
	}
	return tea.Batch(drawn, away, place)
}

// frameDrawn is the time after which a frame is on the terminal, at 30 frames a second or more.
const frameDrawn = 100 * time.Millisecond

// pictureDue is a picture whose frame has been drawn.
type pictureDue onScreen

func (d pictureDue) tell(m *root) (tea.Cmd, bool) {
	if onScreen(d) != m.pics.now {
		return nil, false
	}
	return tea.Raw(ansi.SaveCursor + ansi.CursorPosition(d.x+1, d.y+1) + d.page.have + ansi.RestoreCursor), false
}
