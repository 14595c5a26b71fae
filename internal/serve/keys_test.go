package serve

import (
	"bytes"
	//lint:ignore SA1019 a key that is refused
	"crypto/dsa"
	"crypto/ecdsa"
	"crypto/ed25519"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/rsa"
	"log/slog"
	"math/big"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

func newKey(t testing.TB) gossh.PublicKey {
	t.Helper()
	public, _, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return wireKey(t, public)
}

func wireKey(t testing.TB, public any) gossh.PublicKey {
	t.Helper()
	key, err := gossh.NewPublicKey(public)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

func lineOf(key gossh.PublicKey, comment string) string {
	return strings.TrimSpace(string(gossh.MarshalAuthorizedKey(key))) + " " + comment
}

// ring is a keyring over two files that a test writes.
func ring(t testing.TB, readers, writers string, open bool) (k *keyring, dir string, log *bytes.Buffer) {
	t.Helper()
	dir, log = t.TempDir(), new(bytes.Buffer)
	s := &Settings{Keys: filepath.Join(dir, "readers"), Writers: filepath.Join(dir, "writers"), Open: open}
	write(t, s.Keys, readers)
	write(t, s.Writers, writers)
	return newKeyring(s, slog.New(slog.NewTextHandler(log, nil))), dir, log
}

func write(t testing.TB, file, text string) {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestKeysGiveRoles(t *testing.T) {
	reader, writer, both, nameless, stranger := newKey(t), newKey(t), newKey(t), newKey(t), newKey(t)
	k, _, _ := ring(t, "# the shop\n\n"+lineOf(reader, "ana at booth 2")+"\r\n"+lineOf(both, "reads"),
		lineOf(writer, "bo")+"\n"+lineOf(both, "cleo")+"\n"+lineOf(nameless, ""), false)
	for _, x := range []struct {
		key    gossh.PublicKey
		name   string
		writer bool
	}{{reader, "ana at booth 2", false}, {writer, "bo", true}, {both, "cleo", true}} {
		if g, ok := k.guest(x.key); !ok || g.Name != x.name || g.Writer != x.writer ||
			g.Key != gossh.FingerprintSHA256(x.key) {
			t.Errorf("%+v, %v", g, ok)
		}
	}
	// the client's own name could be somebody else's
	if g, ok := k.guest(nameless); !ok || !strings.HasPrefix(g.Name, "key ") {
		t.Errorf("a key without a comment is called %q", g.Name)
	}
	if _, ok := k.guest(stranger); ok {
		t.Error("a stranger is in")
	}
	if _, ok := k.guest(nil); ok {
		t.Error("somebody without a key is in")
	}
	k.open = true
	if g, ok := k.guest(stranger); !ok || g.Writer {
		t.Errorf("an open shop: %+v, %v", g, ok)
	}
}

// A line with a restriction that the server does not obey gives no permission at all.
func TestKeysWithOptionsAreRefused(t *testing.T) {
	for _, option := range []string{`command="/bin/sh"`, `from="192.0.2.0/24"`, "cert-authority",
		`expiry-time="20200101"`, `environment="A=b"`, "restrict", "verify-required", `principals="x"`,
		`tunnel="0"`, "no-pty"} {
		key := newKey(t)
		k, _, log := ring(t, option+" "+lineOf(key, "ana"), "", false)
		if _, ok := k.guest(key); ok || !strings.Contains(log.String(), "left out") {
			t.Errorf("%s is silently ignored: %s", option, log)
		}
	}
	for _, option := range []string{"no-port-forwarding", "no-agent-forwarding,no-X11-forwarding", "no-user-rc"} {
		key := newKey(t)
		if k, _, _ := ring(t, option+" "+lineOf(key, "ana"), "", false); !in(k, key) {
			t.Errorf("%s is given in any case and is refused", option)
		}
	}
}

// A line that is longer than any key is reported, and its file lets nobody in.
func TestEndlessLineOfKeys(t *testing.T) {
	key := newKey(t)
	k, _, log := ring(t, lineOf(key, "ana")+"\n"+strings.Repeat("x", 1<<17), "", false)
	if in(k, key) || !strings.Contains(log.String(), "line 2 is longer than any key") {
		t.Errorf("%s", log)
	}
}

func in(k *keyring, key gossh.PublicKey) bool { _, ok := k.guest(key); return ok }

func TestWeakKeysAreRefused(t *testing.T) {
	t.Setenv("GODEBUG", "rsa1024min=0") // to make one
	small, err := rsa.GenerateKey(rand.Reader, 1024)
	if err != nil {
		t.Fatal(err)
	}
	large, err := rsa.GenerateKey(rand.Reader, 2048)
	if err != nil {
		t.Fatal(err)
	}
	curve, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	old := &dsa.PublicKey{Parameters: dsa.Parameters{P: new(big.Int).Lsh(big.NewInt(1), 1023),
		Q: new(big.Int).Lsh(big.NewInt(1), 159), G: big.NewInt(2)}, Y: big.NewInt(3)}
	_, authority, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	signer, err := gossh.NewSignerFromKey(authority)
	if err != nil {
		t.Fatal(err)
	}
	cert := &gossh.Certificate{Key: newKey(t), CertType: gossh.UserCert, ValidPrincipals: []string{"ana"},
		ValidBefore: gossh.CertTimeInfinity}
	if err := cert.SignCert(rand.Reader, signer); err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		name string
		key  gossh.PublicKey
		ok   bool
	}{{"RSA 1024", wireKey(t, &small.PublicKey), false}, {"RSA 2048", wireKey(t, &large.PublicKey), true}, {"P-256",
		wireKey(t, &curve.PublicKey), true},
		{"DSA", wireKey(t, old), false}, {"a certificate", cert, false}} {
		k, _, _ := ring(t, lineOf(x.key, "ana"), "", false)
		if in(k, x.key) != x.ok || (strong(x.key) == nil) != x.ok {
			t.Errorf("%s: in %v", x.name, !x.ok)
		}
	}
	// A certificate gives neither the permission of its key nor that of the key that signed it.
	if k, _, _ := ring(t, lineOf(cert.Key, "ana")+"\n"+lineOf(signer.PublicKey(), "authority"), "", false); in(k,
		cert) {
		t.Error("a certificate lets in")
	}
}

// A file that is written twice with the same length and time is read twice.
func TestKeysAreReadAgain(t *testing.T) {
	a, b := newKey(t), newKey(t)
	k, dir, _ := ring(t, lineOf(a, "x"), "", false)
	file := filepath.Join(dir, "readers")
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	if !in(k, a) || in(k, b) {
		t.Fatal("the first file is not obeyed")
	}
	write(t, file, lineOf(b, "x"))
	if err := os.Chtimes(file, info.ModTime(), info.ModTime()); err != nil {
		t.Fatal(err)
	}
	if in(k, a) || !in(k, b) {
		t.Error("a change within the same moment is not seen")
	}
	old := time.Now().Add(-time.Hour)
	if err := os.Chtimes(file, old, old); err != nil {
		t.Fatal(err)
	}
	in(k, b)
	write(t, file+"2", lineOf(a, "x"))
	if err := os.Chtimes(file+"2", old, old); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(file+"2", file); err != nil {
		t.Fatal(err)
	}
	if !in(k, a) || in(k, b) {
		t.Error("another file of the same time and length is not seen")
	}
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	if in(k, a) {
		t.Error("a file that is gone lets in")
	}
	write(t, file, lineOf(b, "x"))
	if !in(k, b) {
		t.Error("a file that is back is not read")
	}
}

func TestInvalidKeyFiles(t *testing.T) {
	key := newKey(t)
	for _, text := range []string{strings.Repeat("x", 100_000) + "\n" + lineOf(key, "ana"), "ssh-ed25519 !!!\n",
		"\x00\x01", lineOf(key, "ana")[:40]} {
		if k, _, _ := ring(t, text, "", false); in(k, key) {
			t.Errorf("%.20q lets in", text)
		}
	}
	k, dir, _ := ring(t, lineOf(key, "ana"), "", false)
	if err := os.Remove(filepath.Join(dir, "readers")); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "readers"), 0o700); err != nil {
		t.Fatal(err)
	}
	if in(k, key) {
		t.Error("a folder lets in")
	}
}

func TestCommentsOfKeysAreSafe(t *testing.T) {
	key := newKey(t)
	k, _, _ := ring(t, lineOf(key, "ana\x1b]52;c;cm0gLXJm\x07\u202e\u009b31m"+strings.Repeat("x", 500)), "", false)
	g, ok := k.guest(key)
	if !ok || !strings.HasPrefix(g.Name, "ana") || strings.ContainsFunc(g.Name, func(r rune) bool {
		return r < ' ' ||
			r >= 0x7f && r != '…'
	}) || len(g.Name) > 70 {
		t.Errorf("%q, %v", g.Name, ok)
	}
}
