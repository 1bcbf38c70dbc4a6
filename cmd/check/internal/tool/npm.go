package tool

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
)

// stamp is the file in node_modules that holds the hash of the lock file it was installed from. npm clears the
// folder before it installs, so a stamp that is there was written after an install that came to its end.
const stamp = ".installed-from"

// Packages makes sure that folder/node_modules holds what folder/package-lock.json names, no more and no less.
func Packages(ctx context.Context, m Machine, folder string) error {
	lock, err := os.ReadFile(filepath.Join(folder, "package-lock.json"))
	if err != nil {
		return fmt.Errorf("the lock file of the npm checkers: %w", err)
	}
	sum := sha256.Sum256(lock)
	want := hex.EncodeToString(sum[:])
	mark := filepath.Join(folder, "node_modules", stamp)
	if have, err := os.ReadFile(mark); err == nil && string(have) == want {
		return nil
	}
	fmt.Fprintf(m.Say, "setup: installing the checkers of cmd/check/browser/package-lock.json with npm ci\n")
	if err := quietly(m.Run(ctx, folder, "npm", "ci")); err != nil {
		return fmt.Errorf("the npm checkers could not be installed: %w\n"+
			"Look at the lines above, then run this again: npm ci --prefix cmd/check/browser", err)
	}
	return os.WriteFile(mark, []byte(want), 0o644)
}
