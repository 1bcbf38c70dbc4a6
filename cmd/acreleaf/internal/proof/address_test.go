package proof

import "testing"

// What a browser does with each is the outcome of new URL(…) by the URL standard.
func TestUnopened(t *testing.T) {
	for _, good := range []string{
		"https://example.org", "HTTPS://EXAMPLE.ORG/a b", "http://example.org:8080/", "http://example.org:/",
		"http://a@b.org/",
		"http://192.0.2.7/", "http://[2001:db8::1]:80/x", "https://ñandú.example/", "https://a.b.example./",
		"ftp://a.example",
		"https://example.org/%zz", "https://example.org\\x", "https://ex%61mple.org/", "https://a_b.example",
		"mailto:a@b", "guides/soil.md", "https://1.example.org", "https://example.org?a:b",
	} {
		if why := unopened(good); why != "" {
			t.Errorf("%s: %s", good, why)
		}
	}
	for address, want := range map[string]string{
		"https://":                  "there is no host in it",
		"https:///a":                "there is no host in it",
		"https://user@":             "there is no host in it",
		"https://exa mple.org":      `the host "exa mple.org" has a character in it that no host has`,
		"https://exa<b>.org/":       `the host "exa<b>.org" has a character in it that no host has`,
		"https://a|b":               `the host "a|b" has a character in it that no host has`,
		"https://a%20b.org":         `the host "a%20b.org" has a character in it that no host has`,
		"https://%5C%5Chost":        `the host "%5C%5Chost" has a character in it that no host has`,
		"https://a%zz.org":          `the host "a%zz.org" has a % in it`,
		"https://example.org:99999": `"99999" is no port: that is a number up to 65535`,
		"https://example.org:a":     `"a" is no port: that is a number up to 65535`,
		"http://[::1":               `"[::1" is not an address of numbers`,
		"http://[::1]80":            `"80" is no port: that is a number up to 65535`,
		"http://192.0.2.256/":       `"192.0.2.256" is not an address of numbers`,
		"http://1.2.3.4.5/":         `"1.2.3.4.5" is not an address of numbers`,
	} {
		if got := unopened(address); got != want {
			t.Errorf("%s: %q, want %q", address, got, want)
		}
	}
}
