package serve

import (
	"bufio"
	"bytes"
	"cmp"
	"crypto/rsa"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"slices"
	"strings"
	"sync"
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/plain"
)

// Guest is the user of a session.
type Guest struct {
	Name   string // the key's comment, or the client's own name without a listed key; safe for a terminal
	From   string // address
	Key    string // fingerprint, "" for a guest without a key
	Writer bool   // may save into the book

	// Fault logs an error of the book or the machine that the guest must not see; nil if there is no log.
	Fault func(error)

	key    ssh.PublicKey // nil for a guest without a key
	listed bool          // the key is in a file of keys
}

// account is the key or address whose limit counts a guest's sessions: the listed key, or else the address. Anybody can
// make any number of keys, so an unlisted key counts like none.
func (g *Guest) account() string {
	if g.listed {
		return g.Key
	}
	return placeOf(g.From)
}

// mayAs reports whether two guests have the same role and are known in the same way.
func (g *Guest) mayAs(other *Guest) bool { return g.listed == other.listed && g.Writer == other.Writer }

// keyring knows which keys are allowed. It reads its files again when they change; a file that cannot be read allows
// nobody.
type keyring struct {
	readers, writers *keyFile
	open             bool
}

func newKeyring(s *Settings, log *slog.Logger) *keyring {
	return &keyring{&keyFile{path: s.Keys, log: log}, &keyFile{path: s.Writers, log: log}, s.Open}
}

// guest is what a key may do now; ok is false if it is not allowed.
func (k *keyring) guest(key ssh.PublicKey) (g Guest, ok bool) {
	if key == nil {
		return Guest{}, k.open
	}
	g.Key, g.key = gossh.FingerprintSHA256(key), key
	id := key.Marshal()
	name, writes := k.writers.names()[string(id)]
	reads := writes
	if !writes {
		name, reads = k.readers.names()[string(id)]
	}
	if !reads {
		return g, k.open
	}
	// A key without a comment gets its own name, since the client's name may be somebody else's.
	g.Name, g.Writer, g.listed = cmp.Or(name, "key "+strings.TrimPrefix(g.Key, "SHA256:")[:12]), writes, true
	return g, true
}

// keyFile is a file of public keys in the form of authorized_keys (sshd(8), AUTHORIZED_KEYS FILE FORMAT).
type keyFile struct {
	path string
	log  *slog.Logger
	mu   sync.Mutex
	seen os.FileInfo
	at   time.Time         // when it was read
	list map[string]string // a key's name, by its wire form
}

func (f *keyFile) names() map[string]string {
	if f.path == "" {
		return nil
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	info, err := os.Stat(f.path)
	if err == nil && f.same(info) {
		return f.list
	}
	var text []byte
	if err == nil {
		text, err = os.ReadFile(f.path)
	}
	if err == nil {
		f.seen, f.at, f.list = info, time.Now(), f.parse(text)
		return f.list
	}
	if f.list != nil || f.seen == nil {
		f.log.Error("this file of keys lets nobody in", "err", err)
	}
	f.list, f.seen = nil, nil
	return nil
}

// same reports whether a file is unchanged since it was read. A file that was written just before it was read counts as
// changed, since it may have been written again in the same tick of its clock.
func (f *keyFile) same(info os.FileInfo) bool {
	return f.seen != nil && os.SameFile(info, f.seen) && info.Size() == f.seen.Size() &&
		info.ModTime().Equal(f.seen.ModTime()) && f.at.Sub(info.ModTime()) > 2*time.Second
}

// parse reads the lines whose options the server obeys. Other lines are left out and logged, so that no restriction is
// silently ignored.
func (f *keyFile) parse(text []byte) map[string]string {
	list := map[string]string{}
	lines := bufio.NewScanner(bytes.NewReader(text))
	lines.Buffer(nil, 64<<10)
	n := 1
	for ; lines.Scan(); n++ {
		line := strings.TrimSpace(lines.Text())
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		key, name, err := publicKey(line)
		if err != nil {
			f.log.Warn("a line of this file of keys is left out", "file", f.path, "line", n, "why", err)
			continue
		}
		list[string(key.Marshal())] = name
	}
	if err := lines.Err(); err != nil {
		if errors.Is(err, bufio.ErrTooLong) {
			err = fmt.Errorf("line %d is longer than any key", n)
		}
		f.log.Error("this file of keys lets nobody in", "file", f.path, "err", err)
		return nil
	}
	return list
}

func publicKey(line string) (ssh.PublicKey, string, error) {
	key, comment, options, _, err := gossh.ParseAuthorizedKey([]byte(line))
	if err != nil {
		return nil, "", err
	}
	for _, o := range options {
		switch strings.ToLower(o) { // these restrictions always apply
		case "no-port-forwarding", "no-agent-forwarding", "no-x11-forwarding", "no-user-rc":
		default:
			return nil, "", fmt.Errorf("the option %q is not supported here", plain.Line(o, 40))
		}
	}
	if err := strong(key); err != nil {
		return nil, "", err
	}
	return key, plain.Line(comment, 60), nil
}

// curves are the types of keys that are strong in any size.
var curves = [...]string{gossh.KeyAlgoED25519, gossh.KeyAlgoSKED25519, gossh.KeyAlgoSKECDSA256, gossh.KeyAlgoECDSA256,
	gossh.KeyAlgoECDSA384, gossh.KeyAlgoECDSA521}

// strong refuses keys that NIST SP 800-131A rev. 2 (2019) no longer allows for signatures, and certificates, since this
// server trusts no authority.
func strong(key gossh.PublicKey) error {
	if slices.Contains(curves[:], key.Type()) {
		return nil
	}
	c, ok := key.(gossh.CryptoPublicKey)
	if key.Type() != gossh.KeyAlgoRSA || !ok {
		return fmt.Errorf("a key of type %s", plain.Line(key.Type(), 40))
	}
	if r, ok := c.CryptoPublicKey().(*rsa.PublicKey); !ok || r.N.BitLen() < 2048 {
		return errors.New("an RSA key of less than 2048 bits")
	}
	return nil
}
