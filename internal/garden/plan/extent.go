package plan

// extent is how many characters of the line a scalar takes that begins it:
// quote to quote, or up to what ends a plain one. whole is false when its
// closing quote is not on the line, or nothing is there.
func extent(line []rune, flow bool) (length int, whole bool) {
	if len(line) == 0 {
		return 0, false
	}
	switch line[0] {
	case '\'':
		return singleQuoted(line)
	case '"':
		return doubleQuoted(line)
	}
	length = plainExtent(line, flow)
	for length > 0 && isBlank(line[length-1]) {
		length--
	}
	return length, length > 0
}

func singleQuoted(line []rune) (length int, whole bool) {
	for i := 1; i < len(line); i++ {
		if line[i] != '\'' {
			continue
		}
		if i+1 < len(line) && line[i+1] == '\'' {
			i++
			continue
		}
		return i + 1, true
	}
	return len(line), false
}

func doubleQuoted(line []rune) (length int, whole bool) {
	for i := 1; i < len(line); i++ {
		switch line[i] {
		case '\\':
			i++
		case '"':
			return i + 1, true
		}
	}
	return len(line), false
}

func plainExtent(line []rune, flow bool) int {
	for i, r := range line {
		ends := i+1 == len(line) || isBlank(line[i+1])
		switch {
		case r == '#' && i > 0 && isBlank(line[i-1]):
			return i
		case r == ':' && ends:
			return i
		case flow && isFlowSign(r):
			return i
		case flow && r == ':' && isFlowSign(line[i+1]):
			return i
		}
	}
	return len(line)
}

func isBlank(r rune) bool { return r == ' ' || r == '\t' }

func isFlowSign(r rune) bool {
	return r == ',' || r == '[' || r == ']' || r == '{' || r == '}'
}
