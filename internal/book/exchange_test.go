package book

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// What editors of other systems put before a text, and what is too long for any revision, is no riddle.
func TestImportOfWhatAnEditorTouched(t *testing.T) {
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
		"a mark of the byte order":   {"\ufeff" + text, "", n},
		"carriage returns":           {strings.ReplaceAll(text, "\n", "\r\n") + "\r\n", "", n},
		"no line break at the end":   {strings.TrimSuffix(text, "\n"), "", n},
		"a line without an end":      {text + strings.Repeat("x", longestLine+1<<17) + "\n", fmt.Sprintf("line %d: longer than any revision (8 MB)", n+1), n},
		"a word behind the last one": {text + "\nnonsense", fmt.Sprintf("line %d is no revision", n+2), n},
	} {
		to, err := OpenFile(ctx, filepath.Join(t.TempDir(), "to.db"))
		noErr(t, err)
		got, err := Import(ctx, to, strings.NewReader(c.text))
		if got != c.n || (err == nil) != (c.want == "") || err != nil && !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %d of %d revisions, %v", name, got, c.n, err)
		}
		noErr(t, to.Close())
	}
}
