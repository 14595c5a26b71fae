package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// slip is one mistake: some bytes of a file replaced by others.
type slip struct {
	file       string // whole path
	name       string // as it was asked for
	text       []byte
	at, length int
	with       string
	line       int
	twin       int // how many before it look the same
}

func (s *slip) source() []byte {
	return append(append(append([]byte{}, s.text[:s.at]...), s.with...), s.text[s.at+s.length:]...)
}

// String is the line with the mistake shown in its place, "a {+ → -} b": a name that moves with its line.
func (s *slip) String() string {
	from := strings.LastIndexByte(string(s.text[:s.at]), '\n') + 1
	end := s.at + s.length
	rest, _, _ := strings.Cut(string(s.text[end:]), "\n")
	line := fmt.Sprintf("%s{%s → %s}%s", s.text[from:s.at], s.text[s.at:end], s.with, rest)
	name := filepath.ToSlash(filepath.Clean(s.name)) + ": " + strings.TrimSpace(line)
	if s.twin > 0 {
		name += fmt.Sprintf(" (%d)", s.twin+1)
	}
	return name
}

// swaps are the operators that a hand mixes up.
var swaps = map[token.Token]string{
	token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*", token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">",
	token.EQL: "!=", token.NEQ: "==", token.LAND: "||", token.LOR: "&&", token.ADD_ASSIGN: "-=", token.SUB_ASSIGN: "+=", token.MUL_ASSIGN: "/=", token.QUO_ASSIGN: "*=",
	token.INC: "--", token.DEC: "++",
}

// slips lists every mistake that can be made in a folder's code.
func slips(folder string) ([]slip, error) {
	names, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var list []slip
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		more, err := slipsOf(name)
		if err != nil {
			return nil, err
		}
		list = append(list, more...)
	}
	if len(list) == 0 {
		return nil, fmt.Errorf("no Go code in %s", folder)
	}
	seen := map[string]int{}
	for i := range list {
		name := list[i].String()
		list[i].twin = seen[name]
		seen[name]++
	}
	return list, nil
}

func slipsOf(name string) ([]slip, error) {
	whole, err := filepath.Abs(name)
	if err != nil {
		return nil, err
	}
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	files := token.NewFileSet()
	tree, err := parser.ParseFile(files, name, text, 0)
	if err != nil {
		return nil, err
	}
	var list []slip
	add := func(at token.Pos, length int, with string) {
		p := files.Position(at)
		list = append(list, slip{file: whole, name: name, text: text, at: p.Offset, length: length, with: with, line: p.Line})
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec, *ast.Field:
			return false
		case *ast.BinaryExpr:
			swap(add, n.OpPos, n.Op)
		case *ast.AssignStmt:
			swap(add, n.TokPos, n.Tok)
		case *ast.IncDecStmt:
			swap(add, n.TokPos, n.Tok)
		case *ast.UnaryExpr:
			if n.Op == token.SUB || n.Op == token.NOT {
				add(n.OpPos, 1, "")
			}
		case *ast.BasicLit:
			number(add, n)
		case *ast.Ident:
			if other := map[string]string{"min": "max", "max": "min", "true": "false", "false": "true"}[n.Name]; other != "" {
				add(n.Pos(), len(n.Name), other)
			}
		}
		return true
	})
	return list, nil
}

func swap(add func(token.Pos, int, string), at token.Pos, op token.Token) {
	if with := swaps[op]; with != "" {
		add(at, len(op.String()), with)
	}
}

// number is off by one, or by a tenth.
func number(add func(token.Pos, int, string), n *ast.BasicLit) {
	switch n.Kind {
	case token.INT:
		if v, err := strconv.ParseInt(n.Value, 0, 64); err == nil {
			add(n.Pos(), len(n.Value), strconv.FormatInt(v+1, 10))
		}
	case token.FLOAT:
		if v, err := strconv.ParseFloat(n.Value, 64); err == nil {
			add(n.Pos(), len(n.Value), strconv.FormatFloat(v*1.1, 'g', -1, 64))
		}
	}
}
