package main

import (
	"bytes"
	"crypto/ed25519"
	"crypto/rand"
	"encoding/pem"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"golang.org/x/crypto/ssh"
)

// door is a server for guests: the program's own, or OpenSSH's.
type door struct {
	addr    string
	metrics string // address of its metrics; "" if it has none
	used    func() (use, error)
	process *exec.Cmd
	key     ssh.Signer // an allowed key
}

// open starts a server and waits until it accepts connections.
func (d *door) open() error {
	told := new(bytes.Buffer)
	d.process.Stdout, d.process.Stderr = told, told
	if err := d.process.Start(); err != nil {
		return err
	}
	ended := make(chan error, 1)
	go func() { ended <- d.process.Wait() }()
	for deadline := time.Now().Add(10 * time.Second); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		select {
		case err := <-ended:
			return fmt.Errorf("%s ended: %w\n%s", d.process.Path, err, told)
		default:
		}
		if c, err := net.Dial("tcp", d.addr); err == nil {
			return c.Close()
		}
	}
	return fmt.Errorf("%s does not listen at %s", d.process.Path, d.addr)
}

func (d *door) close() { _ = d.process.Process.Signal(syscall.SIGTERM) }

// ownDoor starts the program's own server, with higher limits for one address and one key, since all guests come from
// here.
func ownDoor(dir, program string, more ...string) (*door, error) {
	key, err := makeKey(filepath.Join(dir, "guest"))
	if err != nil {
		return nil, err
	}
	d := &door{key: key}
	if d.addr, err = freePort(); err != nil {
		return nil, err
	}
	if d.metrics, err = freePort(); err != nil {
		return nil, err
	}
	args := []string{"serve", "--listen", d.addr, "--metrics", d.metrics, "--keys", filepath.Join(dir, "guest.pub"),
		"--host-key", filepath.Join(dir, "host"), "--log", filepath.Join(dir, "log"),
		"--book", filepath.Join(dir, "book.db"), "--per-address", "5000", "--connections", "5000",
		"--sessions", "5000", "--per-key", "5000", "--handshake", "60s"}
	home := filepath.Join(dir, "home")
	d.process = exec.Command(program, append(args, more...)...)
	d.process.Env = append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home, "XDG_DATA_HOME="+home)
	d.used = func() (use, error) { return useOf(d.process.Process.Pid) }
	return d, d.open()
}

// errNoSSHD means that there is nothing to compare with.
var errNoSSHD = errors.New("sshd is not installed")

// sshdDoor starts OpenSSH's server, which starts the program for every guest.
func sshdDoor(dir, program string) (*door, error) {
	path, err := exec.LookPath("sshd")
	if err != nil {
		if path, err = exec.LookPath("/usr/sbin/sshd"); err != nil {
			return nil, errNoSSHD
		}
	}
	key, err := makeKey(filepath.Join(dir, "guest"))
	if err != nil {
		return nil, err
	}
	if _, err := makeKey(filepath.Join(dir, "sshd_host")); err != nil {
		return nil, err
	}
	d := &door{key: key}
	if d.addr, err = freePort(); err != nil {
		return nil, err
	}
	_, port, _ := net.SplitHostPort(d.addr)
	home := filepath.Join(dir, "home")
	if err := walked(home); err != nil {
		return nil, err
	}
	settings := strings.Join([]string{"Port " + port, "ListenAddress 127.0.0.1",
		"HostKey " + filepath.Join(dir, "sshd_host"), "AuthorizedKeysFile " + filepath.Join(dir, "guest.pub"),
		"PidFile none", "StrictModes no", "PermitRootLogin yes", "UsePAM no", "PasswordAuthentication no",
		"MaxStartups 2000", "LoginGraceTime 120", "PrintMotd no", "PrintLastLog no",
		"ForceCommand HOME=" + home + " XDG_DATA_HOME=" + home + " XDG_STATE_HOME=" + home + " exec " + program,
	}, "\n") + "\n"
	file := filepath.Join(dir, "sshd_config")
	if err := os.WriteFile(file, []byte(settings), 0o600); err != nil {
		return nil, err
	}
	d.process = exec.Command(path, "-D", "-e", "-f", file)
	d.used = func() (use, error) { return useBelow(d.process.Process.Pid) }
	return d, d.open()
}

// walked marks the first walk as shown in a home folder, so that guests press keys on the card and not in the walk.
func walked(home string) error {
	dir := filepath.Join(home, "brazebooth")
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "walked"), nil, 0o600)
}

// makeKey makes a key pair as ssh-keygen does, once.
func makeKey(file string) (ssh.Signer, error) {
	if text, err := os.ReadFile(file); err == nil {
		return ssh.ParsePrivateKey(text)
	}
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		return nil, err
	}
	block, err := ssh.MarshalPrivateKey(private, "")
	if err != nil {
		return nil, err
	}
	signer, err := ssh.NewSignerFromKey(private)
	if err != nil {
		return nil, err
	}
	return signer, errors.Join(os.WriteFile(file, pem.EncodeToMemory(block), 0o600),
		os.WriteFile(file+".pub", ssh.MarshalAuthorizedKey(signer.PublicKey()), 0o600))
}

func freePort() (string, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return "", err
	}
	return l.Addr().String(), l.Close()
}

// page is one figure of the server's metrics.
func (d *door) page(name string) (float64, error) {
	answer, err := http.Get("http://" + d.metrics + "/metrics")
	if err != nil {
		return 0, err
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		return 0, err
	}
	for line := range strings.Lines(string(text)) {
		if rest, ok := strings.CutPrefix(line, name+" "); ok {
			var v float64
			_, err := fmt.Sscan(rest, &v)
			return v, err
		}
	}
	return 0, fmt.Errorf("the page has no %s", name)
}
