package serve

import (
	"crypto/rand"
	"crypto/rsa"
	"encoding/pem"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"golang.org/x/crypto/ssh"
)

func TestHostKeyIsMadeOnce(t *testing.T) {
	file := filepath.Join(t.TempDir(), "data", "key")
	first, err := hostKey(file)
	if err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(file)
	if err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if dir, err := os.Stat(filepath.Dir(file)); err != nil || dir.Mode().Perm() != 0o700 {
		t.Errorf("folder of mode %v, %v", dir.Mode(), err)
	}
	again, err := hostKey(file)
	if err != nil || !same(first, again) {
		t.Errorf("another key the second time: %v", err)
	}
	if list, err := os.ReadDir(filepath.Dir(file)); err != nil || len(list) != 1 {
		t.Errorf("something is left beside it: %v %v", list, err)
	}
}

func same(a, b ssh.Signer) bool {
	return string(a.PublicKey().Marshal()) == string(b.PublicKey().Marshal())
}

// Servers that start at once on one folder use the same key, and none ever reads half of it.
func TestHostKeyOfManyAtOnce(t *testing.T) {
	file := filepath.Join(t.TempDir(), "key")
	keys := make([]ssh.Signer, 16)
	var all sync.WaitGroup
	for i := range keys {
		all.Go(func() {
			var err error
			if keys[i], err = hostKey(file); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	for _, k := range keys {
		if k == nil || !same(k, keys[0]) {
			t.Fatal("they differ")
		}
	}
}

func TestHostKeysThatAreRefused(t *testing.T) {
	dir := t.TempDir()
	shared := filepath.Join(dir, "shared")
	if _, err := hostKey(shared); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(shared, 0o640); err != nil {
		t.Fatal(err)
	}
	junk := filepath.Join(dir, "junk")
	write(t, junk, "no key")
	weak := filepath.Join(dir, "rsa")
	private, err := rsa.GenerateKey(rand.Reader, 2048)
	if err != nil {
		t.Fatal(err)
	}
	block, err := ssh.MarshalPrivateKey(private, "")
	if err != nil {
		t.Fatal(err)
	}
	write(t, weak, string(pem.EncodeToMemory(block)))
	for file, want := range map[string]string{shared: "others can read", junk: "not a host key",
		weak: "of type ssh-rsa",
		dir:  "others can read", filepath.Join(junk, "key"): "not a directory"} {
		if k, err := hostKey(file); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, %v", file, k, err)
		}
	}
}
