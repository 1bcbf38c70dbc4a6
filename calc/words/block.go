package words

// OfBlock is a text about what is known of a block, by its key: that of the language, else the English one; "" where
// there is none.
func OfBlock(language, key string) string {
	for _, in := range []string{Language(language), English} {
		if e, told := texts()[in][block][key]; told {
			return e.text
		}
	}
	return ""
}
