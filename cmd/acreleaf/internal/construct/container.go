package construct

// Container is a fence of four backticks or more that has Markdown in it. The zero Container is none.
type Container uint8

// The containers.
const (
	NoContainer Container = iota
	Example               // what is typed, beside what the page makes of it
	Leader                // notes for who leads a workshop, which are on a page of their own
	Containers            // how many there are, for tables by container
)

var containerWords = [Containers]string{Example: "example", Leader: "leader"}

func (c Container) String() string { return containerWords[c] }

// ContainerOf gives the container that a word after a fence begins; NoContainer for any other word.
func ContainerOf(word string) Container {
	for c := Example; c < Containers; c++ {
		if containerWords[c] == word {
			return c
		}
	}
	return NoContainer
}

// ContainerWords lists the words of containers.
func ContainerWords() []string { return containerWords[Example:] }
