package calc

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Sentences of a card are also shown on screens, where nobody types a flag: they name the choice.
func TestNoSentenceNamesAFlag(t *testing.T) {
	flag := regexp.MustCompile(`--[a-z]`)
	read := 0
	for _, room := range []string{".", "../tables"} {
		err := filepath.WalkDir(room, func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING {
					read++
					if flag.MatchString(text.Value) {
						t.Errorf("%s: %s", path, text.Value)
					}
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if read < 1000 {
		t.Errorf("%d texts were read", read)
	}
}
