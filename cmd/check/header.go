package main

import (
	"debug/elf"
	"debug/macho"
	"debug/pe"
	"fmt"
	"strings"
)

// elfHeader reads the file of a Linux program. A loader that the file asks for counts as a library: there is one only
// where there are libraries to load.
func elfHeader(name string) (machine string, libraries []string, err error) {
	f, err := elf.Open(name)
	if err != nil {
		return "", nil, err
	}
	defer f.Close()
	if f.Type != elf.ET_EXEC && f.Type != elf.ET_DYN {
		return "", nil, fmt.Errorf("it is no program but %s", f.Type)
	}
	libraries, err = f.ImportedLibraries()
	for _, part := range f.Progs {
		if part.Type == elf.PT_INTERP {
			libraries = append(libraries, "a loader")
		}
	}
	return f.Machine.String(), libraries, err
}

// machoHeader reads the file of a program for a Mac.
func machoHeader(name string) (machine string, libraries []string, err error) {
	f, err := macho.Open(name)
	if err != nil {
		return "", nil, err
	}
	defer f.Close()
	if f.Type != macho.TypeExec {
		return "", nil, fmt.Errorf("it is no program but %s", f.Type)
	}
	libraries, err = f.ImportedLibraries()
	return f.Cpu.String(), libraries, err
}

// peHeader reads the file of a Windows program. debug/pe lists what is imported by symbol, "name:library", as its list
// of libraries is always empty.
func peHeader(name string) (machine string, libraries []string, err error) {
	f, err := pe.Open(name)
	if err != nil {
		return "", nil, err
	}
	defer f.Close()
	if f.Characteristics&pe.IMAGE_FILE_EXECUTABLE_IMAGE == 0 {
		return "", nil, fmt.Errorf("it is no program")
	}
	symbols, err := f.ImportedSymbols()
	seen := map[string]bool{}
	for _, symbol := range symbols {
		_, library, _ := strings.Cut(symbol, ":")
		if !seen[library] {
			seen[library] = true
			libraries = append(libraries, library)
		}
	}
	return peMachine(f.Machine), libraries, err
}

// peMachine is how the number of a Windows machine is shown.
func peMachine(number uint16) string { return fmt.Sprintf("machine 0x%04x", number) }
