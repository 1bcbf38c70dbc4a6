package main

import (
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"unsafe"
)

// The limits of the system on watches, for the program "unwatched".
const (
	limitVar    = "ACRELEAF_TEST_WATCHES"
	noProgram   = "no program"  // inotify_init1 answers as at fs.inotify.max_user_instances
	noFolder    = "no folder"   // inotify_add_watch answers as at fs.inotify.max_user_watches
	twoFolders  = "two folders" // the kernel's own limit, for this program alone
	limitOfUser = "/proc/sys/user/max_inotify_watches"
)

// The desk where the system watches no more: it says which limit that is, once, looks every second, and goes on.
func TestTheDeskWithoutWatches(t *testing.T) {
	const instead = ", so the desk looks at the folder every second; to raise it, type: sudo sysctl "
	const watches = "fs.inotify.max_user_watches" + instead + "fs.inotify.max_user_watches=524288\n"
	const programs = "fs.inotify.max_user_instances" + instead + "fs.inotify.max_user_instances=512\n"
	ofItsOwn := &syscall.SysProcAttr{Cloneflags: syscall.CLONE_NEWUSER,
		UidMappings: []syscall.SysProcIDMap{{HostID: os.Geteuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{HostID: os.Getegid(), Size: 1}}}
	for limit, sentence := range map[string]string{noProgram: programs, noFolder: watches, twoFolders: watches} {
		t.Run(limit, func(t *testing.T) {
			t.Parallel()
			command := exec.Command("unwatched", "desk", "--port", "0")
			command.Env = append(os.Environ(), limitVar+"="+limit)
			if limit == twoFolders {
				if err := (&exec.Cmd{Path: "/bin/true", SysProcAttr: ofItsOwn}).Run(); err != nil {
					t.Log("no program can have a limit of its own here; the other cases stand for it:", err)
					return
				}
				command.SysProcAttr = ofItsOwn
			}
			d := begin(t, func(string) *exec.Cmd { return command })
			d.saveIsShown()
			d.write("workshops/spring/frost.md", "---\ntitle: Frost\nsummary: Cold.\n---\nIce.\n")
			d.shows("workshops/spring/frost/", "Ice.")
			d.write("workshops/spring/frost.md", "---\ntitle: Frost\nsummary: Cold.\n---\nHoar.\n")
			d.shows("workshops/spring/frost/", "Hoar.")
			d.remove("workshops")
			d.lacks("workshops/spring/frost/")
			d.saveIsShown()
			said := d.terminal()
			if strings.Count(said, sentence) != 1 || strings.Count(said, "every second") != 1 {
				t.Errorf("the author is told\n%s", said)
			}
			d.must(d.process.Process.Signal(syscall.SIGINT))
			if err := d.ends(); err != nil {
				t.Errorf("the desk ends with %v", err)
			}
		})
	}
}

// asUnwatched runs the program where the system watches no more folders.
func asUnwatched() {
	err := fmt.Errorf("no limit is named in %s", limitVar)
	switch os.Getenv(limitVar) {
	case noProgram:
		err = refuse(syscall.SYS_INOTIFY_INIT1, syscall.EMFILE)
	case noFolder:
		err = refuse(syscall.SYS_INOTIFY_ADD_WATCH, syscall.ENOSPC)
	case twoFolders:
		err = os.WriteFile(limitOfUser, []byte("2"), 0)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "the limit cannot be set:", err)
		os.Exit(3)
	}
	main()
}

// refuse begins the program again, with one call that the kernel answers with an error. It takes no rights; see
// seccomp(2).
func refuse(call uint32, answer syscall.Errno) error {
	filter := []syscall.SockFilter{
		{Code: syscall.BPF_LD | syscall.BPF_W | syscall.BPF_ABS}, // the number of the call
		{Code: syscall.BPF_JMP | syscall.BPF_JEQ | syscall.BPF_K, K: call, Jf: 1},
		{Code: syscall.BPF_RET | syscall.BPF_K, K: retErrno | uint32(answer)},
		{Code: syscall.BPF_RET | syscall.BPF_K, K: retAllow},
	}
	program := &syscall.SockFprog{Len: uint16(len(filter)), Filter: &filter[0]}
	runtime.LockOSThread() // the filter is for one thread, and for what it begins
	if _, _, failed := syscall.Syscall6(syscall.SYS_PRCTL, setNoNewPrivs, 1, 0, 0, 0, 0); failed != 0 {
		return failed
	}
	if _, _, failed := syscall.Syscall(syscall.SYS_PRCTL, syscall.PR_SET_SECCOMP, modeFilter,
		uintptr(unsafe.Pointer(program))); failed != 0 {
		return failed
	}
	own, err := os.Executable()
	if err != nil {
		return err
	}
	return syscall.Exec(own, append([]string{"acreleaf"}, os.Args[1:]...), os.Environ())
}

// From prctl(2) and seccomp(2).
const (
	setNoNewPrivs = 38
	modeFilter    = 2
	retErrno      = 0x00050000
	retAllow      = 0x7fff0000
)
