package desk

import (
	"fmt"
	"net"
	"net/netip"
	"os"
	"strconv"
	"strings"
)

// answersTo says whether a request names this computer. A page elsewhere that has its own name point at this computer
// would name itself.
func (d *Desk) answersTo(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	ip, err := netip.ParseAddr(strings.Trim(name, "[]"))
	if err != nil {
		return name == "localhost" || d.options.Share && isOwnName(name)
	}
	return ip.IsLoopback() || d.options.Share && isOwnAddress(ip.Unmap().WithZone(""))
}

// isOwnName says whether a name is the one that this computer has on its network.
func isOwnName(name string) bool {
	own, err := os.Hostname()
	if err != nil || own == "" {
		return false
	}
	short, _, _ := strings.Cut(own, ".")
	name = strings.TrimSuffix(name, ".")
	return strings.EqualFold(name, own) || strings.EqualFold(name, short+".local")
}

// isOwnAddress asks the system each time: a laptop that changes its network has other addresses.
func isOwnAddress(ip netip.Addr) bool {
	for _, own := range ownAddresses() {
		if own == ip {
			return true
		}
	}
	return false
}

func ownAddresses() []netip.Addr {
	interfaces, err := net.InterfaceAddrs()
	if err != nil {
		return nil
	}
	var addresses []netip.Addr
	for _, a := range interfaces {
		if prefix, err := netip.ParsePrefix(a.String()); err == nil {
			addresses = append(addresses, prefix.Addr().Unmap().WithZone(""))
		}
	}
	return addresses
}

// listen takes the port asked for, or a free one when that cannot be had.
func (d *Desk) listen() (net.Listener, error) {
	host := "127.0.0.1"
	if d.options.Share {
		host = ""
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(d.options.Port)))
	if err == nil || d.options.Port == 0 {
		return listener, err
	}
	fmt.Fprintf(d.options.Err, "Port %d cannot be used, so the desk takes another one.\n", d.options.Port)
	return net.Listen("tcp", net.JoinHostPort(host, "0"))
}

// greet says where the desk is, in one piece: whoever waits for the first line may go on with the rest.
func (d *Desk) greet(listener net.Listener) {
	port := strconv.Itoa(listener.Addr().(*net.TCPAddr).Port)
	text := fmt.Sprintf("The desk is at http://%s/ and follows %s. Press Ctrl+C to stop.\n",
		net.JoinHostPort("127.0.0.1", port), d.options.Site.Name)
	shared := sharedAddresses(ownAddresses())
	var typed []string
	for _, ip := range shared {
		typed = append(typed, "http://"+net.JoinHostPort(ip.String(), port)+"/")
	}
	if d.options.Share && len(typed) > 0 {
		text += sharing + "On a phone, type:\n  " + strings.Join(typed, "\n  ") + "\n"
		if d.options.Code {
			text += "or point its camera here:\n" + drawCode(typed[0])
		}
	}
	fmt.Fprint(d.options.Out, text)
	if d.options.Share && len(typed) == 0 {
		d.tell("This computer is on no network now, so no device can reach the desk.")
	}
}

// sharing says what a shared desk opens, and to whom.
const sharing = "Every device on this network can read all pages that the desk shows, unfinished ones too, " +
	"until you stop it.\nNothing can be changed through it, and no other file of this computer can be read.\n"

// sharedAddresses are those that another device may reach: the short ones of the older Internet protocol if there are
// any, since they are to be typed.
func sharedAddresses(own []netip.Addr) []netip.Addr {
	var short, long []netip.Addr
	for _, ip := range own {
		switch {
		case !ip.IsGlobalUnicast():
		case ip.Is4():
			short = append(short, ip)
		default:
			long = append(long, ip)
		}
	}
	if len(short) > 0 {
		return short
	}
	return long
}
