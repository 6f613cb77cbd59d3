package scene

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
)

var (
	rootReference = regexp.MustCompile(`/Root (\d+) 0 R`)
	infoReference = regexp.MustCompile(`/Info (\d+) 0 R`)
	objectCount   = regexp.MustCompile(`/Size (\d+)`)
	tableStart    = regexp.MustCompile(`startxref\s+(\d+)\s+%%EOF\s*$`)
)

// unscaled asks the reader's print dialog to begin at 100 %: it appends the
// catalogue once more with /PrintScaling /None, as an incremental update (ISO
// 32000-1, 7.5.6 and table 150). The dialog can still be changed by hand, so
// the papers carry bars to measure.
func unscaled(pdf []byte) ([]byte, error) {
	root := rootReference.FindSubmatch(pdf)
	info := infoReference.FindSubmatch(pdf)
	size := objectCount.FindSubmatch(pdf)
	table := tableStart.FindSubmatch(pdf)
	if root == nil || info == nil || size == nil || table == nil {
		return nil, errors.New("write the PDF: its trailer was not found")
	}
	head := []byte("\n" + string(root[1]) + " 0 obj\n<<\n")
	at := bytes.LastIndex(pdf, head)
	end := bytes.Index(pdf[max(at, 0):], []byte("\n>>\nendobj"))
	if at < 0 || end < 0 {
		return nil, errors.New("write the PDF: its catalogue was not found")
	}
	entries := pdf[at+len(head) : at+end]

	out := bytes.NewBuffer(bytes.Clone(pdf))
	if !bytes.HasSuffix(pdf, []byte("\n")) {
		out.WriteByte('\n')
	}
	object := out.Len()
	fmt.Fprintf(out, "%s 0 obj\n<<\n%s\n/Version /1.6\n/ViewerPreferences << /PrintScaling /None >>\n>>\nendobj\n", root[1], entries)
	start := out.Len()
	fmt.Fprintf(out, "xref\n%s 1\n%010d 00000 n \n", root[1], object)
	fmt.Fprintf(out, "trailer\n<<\n/Size %s\n/Root %s 0 R\n/Info %s 0 R\n/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n",
		size[1], root[1], info[1], table[1], start)
	return out.Bytes(), nil
}
