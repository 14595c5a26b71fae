// Package address distinguishes a server's address from the name of a file, and shows an address without its password.
// A text that reads like an address but is not valid is never repeated, since any part of it may be the password.
package address

import (
	"errors"
	"net/url"
	"regexp"
	"strings"
	"sync"
)

// ErrBad is the error for a text that reads like a server's address but is not valid.
var ErrBad = errors.New("this is neither the address of a PostgreSQL book nor the name of a file")

// Hint is what to type instead of a bad address.
const Hint = "type postgres://user@host/database, signs like @ : / # % in a password as %40 %3A %2F %23 %25; " +
	"or a file, one with such a name as ./NAME"

// Unsaid replaces an address that is not repeated.
const Unsaid = "(an address that is not repeated)"

// Compiled when first used: most commands see no address.
var (
	local  = pattern(`^(/[^/]|\.\.?[/\\]|~|[a-z]:[/\\])`)
	scheme = pattern(`^[a-z][a-z0-9+.-]+:/|^postgres(ql)?:`)
	// named parts, as in host=db password=...
	named = pattern(`(^|[\s;,?&])(host|hostaddr|user|dbname|port|sslmode|service)\s*=|pass(word|wd|file)?\s*[=:]`)
)

func pattern(text string) func(string) bool {
	made := sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
	return func(s string) bool { return made().MatchString(s) }
}

// Looks reports whether a text was meant as a server's address, valid or not, and not as a file's name: it has ://, a
// scheme, a password before a host, or named parts. A file with such a name is typed with ./ before it.
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
	at := strings.LastIndex(text, "@")
	return at > 0 && strings.Contains(text[:at], ":")
}

// Server reports whether a text has the scheme of a PostgreSQL address; the rest may be invalid.
func Server(text string) bool {
	text = strings.ToLower(text)
	return strings.HasPrefix(text, "postgres://") || strings.HasPrefix(text, "postgresql://")
}

// Check returns ErrBad for a text that reads like a server's address but is not valid; names of files pass.
func Check(text string) error {
	if !Looks(text) {
		return nil
	}
	_, err := parse(text)
	return err
}

// Shown is a book's place as it may be shown: a file's name as it is, an address without its password, and Unsaid for
// an invalid address.
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

// parse checks an address and returns it without its password. It refuses one that may have a password in a wrong
// place.
func parse(text string) (shown string, err error) {
	u, err := url.Parse(text)
	if err != nil || !Server(text) || u.Opaque != "" || u.Fragment != "" || strings.Contains(text, "#") ||
		strings.Contains(u.EscapedPath()+u.RawQuery, "@") {
		return "", ErrBad // err may quote a password
	}
	_, authority, _ := strings.Cut(text, "://")
	if end := strings.IndexAny(authority, "/?"); end >= 0 {
		authority = authority[:end]
	}
	at := strings.LastIndex(authority, "@")
	user, _, _ := strings.Cut(authority[:max(at, 0)], ":")
	if at >= 0 && at == len(authority)-1 || strings.Contains(user, "@") ||
		strings.ContainsAny(u.User.Username(), separators) {
		return "", ErrBad
	}
	if _, err := url.ParseQuery(u.RawQuery); err != nil {
		return "", ErrBad
	}
	if low := strings.ToLower(u.RawQuery); strings.Contains(low, "pass") || strings.Contains(low, "secret") {
		u.RawQuery = "xxxxx" // the whole query: after an & the rest of a password looks like another parameter
	}
	return u.Redacted(), nil
}

// separators are characters that may separate a password from a name, as in user;secret or user%3Asecret.
const separators = ":;,/?#=&|!*\"'` \t"

// Scrub removes the passwords of addresses from a message: each word that reads like an address, even a truncated one,
// is replaced by Shown of it.
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
