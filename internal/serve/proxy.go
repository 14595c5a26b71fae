package serve

import (
	"errors"
	"net"
	"strings"

	"github.com/pires/go-proxyproto"
)

// trust is who is believed when it names a client: a balancer, which always does. Everybody else's connection is taken as
// it is, under its own address; a header that comes there is no part of SSH and names nobody.
func (s *Settings) trust() (proxyproto.ConnPolicyFunc, error) {
	return proxyproto.PolicyFromRanges(strings.Split(strings.ReplaceAll(s.Proxy, " ", ""), ","), proxyproto.REQUIRE, proxyproto.SKIP)
}

var errNoClient = errors.New("the header names a client by no address of TCP")

// clientNamed takes a balancer's header (PROXY protocol, sections 2.1 and 2.2) that names a client by an address of TCP, or says
// that the connection is the balancer's own: LOCAL, or UNKNOWN in version 1. That one is served under the balancer's address, so
// that a balancer which looks whether this is a server sees one.
func clientNamed(h *proxyproto.Header) error {
	if h.Command.IsLocal() || h.TransportProtocol == proxyproto.TCPv4 || h.TransportProtocol == proxyproto.TCPv6 {
		return nil
	}
	return errNoClient
}

// unnamed is what is wrong with a balancer's connection that names nobody, nil for any other.
func unnamed(conn net.Conn) error {
	behind, ok := conn.(*proxyproto.Conn)
	if !ok || behind.ProxyHeader() != nil {
		return nil
	}
	_, err := behind.Read(nil)
	return err
}
