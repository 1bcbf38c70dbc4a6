//go:build !unix

package folder

// withoutWaiting is for systems with pipes and devices in ordinary folders.
const withoutWaiting = 0
