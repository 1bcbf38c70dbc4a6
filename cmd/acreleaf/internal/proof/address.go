package proof

import (
	"fmt"
	"net/netip"
	"net/url"
	"strconv"
	"strings"
)

// webSchemes are the schemes of the web that a link may have, as they are written before a host.
var webSchemes = []string{"http://", "https://", "ftp://"}

// unopened says why no browser opens an address of the web, by the rules of the URL standard (url.spec.whatwg.org, host
// parsing and port state): which characters a host may not have, also when they are written with %, what is an address
// of numbers, and how large a port is. It is "" for any that may be opened.
func unopened(destination string) string {
	text := strings.TrimSpace(destination)
	for _, scheme := range webSchemes {
		if len(text) >= len(scheme) && strings.EqualFold(text[:len(scheme)], scheme) {
			rest := text[len(scheme):]
			if end := strings.IndexAny(rest, `/?#\`); end >= 0 {
				rest = rest[:end]
			}
			return unopenedHost(rest[strings.LastIndex(rest, "@")+1:])
		}
	}
	return ""
}

// unopenedHost looks at a host with its port.
func unopenedHost(text string) string {
	host, port := text, ""
	if strings.HasPrefix(text, "[") {
		inside, rest, closed := strings.Cut(text[1:], "]")
		if ip, err := netip.ParseAddr(inside); !closed || err != nil || !ip.Is6() || ip.Zone() != "" {
			return fmt.Sprintf("%q is not an address of numbers", text)
		}
		host, port = "", rest
	} else if at := strings.IndexByte(text, ':'); at >= 0 {
		host, port = text[:at], text[at:]
	}
	if number := strings.TrimPrefix(port, ":"); number != "" {
		if _, err := strconv.ParseUint(number, 10, 16); err != nil || number == port {
			return fmt.Sprintf("%q is no port: that is a number up to 65535", number)
		}
	}
	if strings.HasPrefix(text, "[") {
		return ""
	}
	plain, err := url.PathUnescape(host)
	if err != nil {
		return fmt.Sprintf("the host %q has a %% in it", host)
	}
	for _, r := range plain {
		if r <= ' ' || r == 0x7f || strings.ContainsRune(`#/:<>?@[\]^|%`, r) {
			return fmt.Sprintf("the host %q has a character in it that no host has", host)
		}
	}
	switch {
	case plain == "":
		return "there is no host in it"
	case !wholeNumbers(plain):
		return fmt.Sprintf("%q is not an address of numbers", host)
	}
	return ""
}

// wholeNumbers says whether a host that ends in a number is an address of four numbers, as 192.0.2.7. The standard
// takes fewer, and other bases; no author means those.
func wholeNumbers(host string) bool {
	host = strings.TrimSuffix(host, ".")
	last := host[strings.LastIndexByte(host, '.')+1:]
	if last == "" || strings.Trim(last, "0123456789") != "" {
		return true
	}
	_, err := netip.ParseAddr(host)
	return err == nil
}
