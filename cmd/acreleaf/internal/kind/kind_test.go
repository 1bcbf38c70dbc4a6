package kind

import "testing"

// A row that contradicts itself would make a page that no part of the program expects.
func TestRows(t *testing.T) {
	names, folders := map[string]bool{}, map[string]bool{"": true}
	for k := range All() {
		row := k.Row()
		if row.Name == "" || names[row.Name] {
			t.Errorf("kind %d has the name %q, which is empty or another's", k, row.Name)
		}
		if row.Folder != "" && folders[row.Folder] {
			t.Errorf("%s has the folder %q of another kind", k, row.Folder)
		}
		names[row.Name], folders[row.Folder] = true, true
		if row.Pattern != "" && (!row.Written || row.Folder == "") {
			t.Errorf("%s has a pattern, and no folder that somebody writes in", k)
		}
		if (row.Numbered || row.Turns || row.Reviewed || row.Warns || row.Typed) && !row.Written {
			t.Errorf("nobody writes a page of kind %s, so nothing can be asked of one", k)
		}
		if got, ok := Of(row.Folder); ok != (row.Written && row.Folder != "") || ok && got != k {
			t.Errorf("the folder %q gives kind %v, %v, want %s", row.Folder, got, ok, k)
		}
	}
}

func TestFolders(t *testing.T) {
	drafted := Folders(func(r Row) bool { return r.Pattern != "" })
	if len(drafted) != 3 || drafted[0] != "guides" || drafted[2] != "courses" {
		t.Errorf("drafted into %v", drafted)
	}
}
