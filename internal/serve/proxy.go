package serve

import (
	"errors"
	"net"
	"strings"

	"github.com/pires/go-proxyproto"
)

// trust is who is believed when it names a client: a balancer, which always names one. Any other connection counts
// under its own address; a header that it sends is not part of SSH and names nobody.
func (s *Settings) trust() (proxyproto.ConnPolicyFunc, error) {
	return proxyproto.PolicyFromRanges(strings.Split(strings.ReplaceAll(s.Proxy, " ", ""), ","), proxyproto.REQUIRE,
		proxyproto.SKIP)
}

// clientNamed accepts a balancer's header (PROXY protocol, sections 2.1 and 2.2) that names a client by an address of
// TCP, or says that the connection is the balancer's own: LOCAL, or UNKNOWN in version 1. The balancer's own
// connection is served under its address, so that a health check works.
func clientNamed(h *proxyproto.Header) error {
	if h.Command.IsLocal() || h.TransportProtocol == proxyproto.TCPv4 || h.TransportProtocol == proxyproto.TCPv6 {
		return nil
	}
	return errors.New("the header names no client by a TCP address")
}

// unnamed is what is wrong with a balancer's connection that names nobody; nil for any other connection.
func unnamed(conn net.Conn) error {
	behind, ok := conn.(*proxyproto.Conn)
	if !ok || behind.ProxyHeader() != nil {
		return nil
	}
	_, err := behind.Read(nil)
	return err
}
