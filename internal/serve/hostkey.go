package serve

import (
	"crypto/ed25519"
	"crypto/rand"
	"encoding/pem"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"brazebooth/internal/mistake"
	"brazebooth/internal/newfile"

	"golang.org/x/crypto/ssh"
)

// HostKeyFile is the name of the server's own key in the data folder, used if no other file is named.
const HostKeyFile = "ssh_host_ed25519_key"

// hostKey reads the server's own key, an Ed25519 key (RFC 8709) in OpenSSH's file format, and makes it if there is
// none. A key that other users of this machine can read is refused: with it they could pretend to be this server.
func hostKey(file string) (ssh.Signer, error) {
	if _, err := os.Stat(file); errors.Is(err, os.ErrNotExist) {
		if err := makeHostKey(file); err != nil {
			return nil, fmt.Errorf("a host key cannot be made: %w", err)
		}
	}
	info, err := os.Stat(file)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() || runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		return nil, mistake.New(fmt.Sprintf("others can read the host key %s (mode %o)", file, info.Mode().Perm()),
			"chmod 600 "+file+
				"; and if others were on this machine, delete it: a new one is made, and clients are told once")
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	key, err := ssh.ParsePrivateKey(text)
	if err != nil {
		return nil, mistake.New(fmt.Sprintf("%s is not a host key: %v", file, err),
			"name another with --host-key, or move it away: a new one is made")
	}
	if key.PublicKey().Type() != ssh.KeyAlgoED25519 {
		return nil, mistake.New(fmt.Sprintf("the host key %s is of type %s", file, key.PublicKey().Type()),
			"it has to be an Ed25519 key: move this one away, and a new one is made")
	}
	return key, nil
}

// makeHostKey writes a new key completely or not at all: two servers that start at once end with the same key.
func makeHostKey(file string) error {
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		return err
	}
	block, err := ssh.MarshalPrivateKey(private, "brazebooth host key")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return err
	}
	err = newfile.Write(file, 0o600, func(w io.Writer) error { return pem.Encode(w, block) })
	if errors.Is(err, fs.ErrExist) { // the other server was faster
		return nil
	}
	return err
}
