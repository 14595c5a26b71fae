package book

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A byte order mark and other traces of a text editor are accepted; a line that is too long for any revision is
// refused.
func TestImportAfterATextEditor(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	from, err := OpenFile(ctx, filepath.Join(t.TempDir(), "from.db"))
	noErr(t, err)
	defer from.Close()
	fill(t, from, by(&now), &now, 3)
	var out bytes.Buffer
	n, err := Export(ctx, from, &out)
	noErr(t, err)
	text := out.String()
	for name, c := range map[string]struct {
		text, want string
		n          int
	}{
		"a mark of the byte order": {"\ufeff" + text, "", n},
		"carriage returns":         {strings.ReplaceAll(text, "\n", "\r\n") + "\r\n", "", n},
		"no line break at the end": {strings.TrimSuffix(text, "\n"), "", n},
		"a line without an end": {text + strings.Repeat("x", longestLine+1<<17) + "\n",
			fmt.Sprintf("line %d: longer than any revision (1 MB)", n+1), n},
		"a word behind the last one": {text + "\nnonsense", fmt.Sprintf("line %d: this is not a revision", n+2), n},
	} {
		to, err := OpenFile(ctx, filepath.Join(t.TempDir(), "to.db"))
		noErr(t, err)
		got, err := Import(ctx, to, strings.NewReader(c.text))
		var out *LeftOut
		if errors.As(err, &out) != (c.want != "") || out == nil && err != nil || got != c.n {
			t.Errorf("%s: %d of %d revisions, %v", name, got, c.n, err)
		}
		if out != nil && (len(out.Lines) != 1 || !strings.HasPrefix(out.Lines[0], c.want)) {
			t.Errorf("%s: %q, want %q", name, out.Lines, c.want)
		}
		noErr(t, to.Close())
	}
}
