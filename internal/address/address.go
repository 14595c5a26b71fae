// Package address tells a server's address from the name of a file, and shows one without what is nobody's business. What reads
// like an address and is none is never repeated: nobody can tell which part of it is the password.
package address

import (
	"errors"
	"net/url"
	"regexp"
	"strings"
	"sync"
)

// ErrBad is what reads like the address of a server and is none.
var ErrBad = errors.New("this is no address of a PostgreSQL book, and no name of a file")

// Hint is what to type instead of an address that is none.
const Hint = "type postgres://user@host/database, signs like @ : / # % in a password as %40 %3A %2F %23 %25; or a file, one with such a name as ./NAME"

// Unsaid stands for an address that is not repeated.
const Unsaid = "(an address that is not repeated)"

// Made when they are first used: most commands meet no address.
var (
	local  = pattern(`^(/[^/]|\.\.?[/\\]|~|[a-z]:[/\\])`)
	scheme = pattern(`^[a-z][a-z0-9+.-]+:/|^postgres(ql)?:`)
	// parts by their names, as in host=db password=...
	named = pattern(`(^|[\s;,?&])(host|hostaddr|user|dbname|port|sslmode|service)\s*=|pass(word|wd|file)?\s*[=:]`)
)

func pattern(text string) func(string) bool {
	made := sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
	return func(s string) bool { return made().MatchString(s) }
}

// Looks reports a text that was meant as a server's address, well or badly written, and not as the name of a file: one with
// ://, a scheme, a password before a host, or with named parts. A file of such a name is one with ./ before it.
func Looks(text string) bool {
	text = strings.ToLower(strings.TrimSpace(text))
	switch {
	case strings.Contains(text, "://"):
		return true
	case local(text):
		return false
	case scheme(text), named(text):
		return true
	}
	before, _, found := cutLast(text, "@")
	return found && strings.Contains(before, ":")
}

// Server reports the address of a PostgreSQL server by its scheme, well written or not.
func Server(text string) bool {
	text = strings.ToLower(text)
	return strings.HasPrefix(text, "postgres://") || strings.HasPrefix(text, "postgresql://")
}

// Check returns ErrBad for what reads like a server's address and is none; names of files pass.
func Check(text string) error {
	if !Looks(text) {
		return nil
	}
	_, err := parse(text)
	return err
}

// Shown is a book's place as it may be shown: a file's name as it is, an address without its password, and Unsaid for what
// reads like one and is none.
func Shown(text string) string {
	if !Looks(text) {
		return text
	}
	shown, err := parse(text)
	if err != nil {
		return Unsaid
	}
	return shown
}

// parse takes an address apart, refuses one in which a password may stand where none belongs, and returns it without its password.
func parse(text string) (shown string, err error) {
	u, err := url.Parse(text)
	if err != nil || !Server(text) || u.Opaque != "" || u.Fragment != "" || strings.Contains(text, "#") || strings.Contains(u.EscapedPath()+u.RawQuery, "@") {
		return "", ErrBad // the fault itself may quote a password
	}
	_, authority, _ := strings.Cut(text, "://")
	if end := strings.IndexAny(authority, "/?"); end >= 0 {
		authority = authority[:end]
	}
	login, host, found := cutLast(authority, "@")
	user, _, _ := strings.Cut(login, ":")
	if found && (host == "" || strings.Contains(user, "@")) || !plainUser(u.User.Username()) {
		return "", ErrBad
	}
	if _, err := url.ParseQuery(u.RawQuery); err != nil {
		return "", ErrBad
	}
	if low := strings.ToLower(u.RawQuery); strings.Contains(low, "pass") || strings.Contains(low, "secret") {
		u.RawQuery = "xxxxx" // all of it: a password with a & in it goes on as another parameter
	}
	return u.Redacted(), nil
}

// plainUser reports a name without signs by which a password may have got into it, as in user;secret or user%3Asecret.
func plainUser(name string) bool {
	return !strings.ContainsAny(name, ":;,/?#=&|!*\"'` \t")
}

func cutLast(text, sign string) (before, after string, found bool) {
	i := strings.LastIndex(text, sign)
	if i < 0 {
		return text, "", false
	}
	return text[:i], text[i+len(sign):], true
}

// Scrub is a message in which no address stands with its password: each word of it that reads like one is shown as Shown shows
// it, also where it was cut short.
func Scrub(message string) string {
	words := strings.Split(message, " ")
	for i, word := range words {
		bare := strings.Trim(word, "\"'`.,:;()")
		_, behind, url := strings.Cut(bare, "://")
		login := strings.Contains(bare, ":") && strings.Contains(bare, "@")
		said := strings.Contains(strings.ToLower(bare), "pass") && strings.Contains(bare, "=")
		if (login || said) && Looks(bare) || url && strings.Contains(behind, ":") {
			words[i] = strings.Replace(word, bare, Shown(bare), 1)
		}
	}
	return strings.Join(words, " ")
}
