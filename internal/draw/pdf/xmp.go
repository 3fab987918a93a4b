package pdf

import (
	"encoding/xml"
	"fmt"
	"strings"
	"time"

	"jarmark/internal/draw/page"
)

// creator and producer stand in the information dictionary and, alike, in XMP.
const (
	creator  = "jarmark"
	producer = "jarmark, fpdf"
)

// metadata is what the file says of itself as XMP (ISO 16684-1): the facts of the
// information dictionary, and what the file claims to be. It is not packed, so that a
// program that knows no PDF finds it.
func metadata(d *page.Doc, claims string, id []byte) []byte {
	at := time.Unix(d.Created, 0).UTC().Format("2006-01-02T15:04:05Z")
	var b strings.Builder
	b.WriteString("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about=""` +
		` xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"` +
		` xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/">` + "\n<dc:format>application/pdf</dc:format>\n")
	if d.Title != "" {
		fmt.Fprintf(&b, "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">%s</rdf:li></rdf:Alt></dc:title>\n", escaped(d.Title))
	}
	if d.Author != "" {
		fmt.Fprintf(&b, "<dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>\n", escaped(d.Author))
	}
	uuid := fmt.Sprintf("uuid:%x-%x-%x-%x-%x", id[:4], id[4:6], id[6:8], id[8:10], id[10:16])
	fmt.Fprintf(&b, "<xmp:CreatorTool>%s</xmp:CreatorTool>\n<xmp:CreateDate>%s</xmp:CreateDate>\n<xmp:ModifyDate>%[2]s</xmp:ModifyDate>\n"+
		"<xmp:MetadataDate>%[2]s</xmp:MetadataDate>\n<pdf:Producer>%s</pdf:Producer>\n<pdf:Trapped>False</pdf:Trapped>\n"+
		"<xmpMM:DocumentID>%s</xmpMM:DocumentID>\n<xmpMM:InstanceID>%[4]s</xmpMM:InstanceID>\n<xmpMM:VersionID>1</xmpMM:VersionID>\n<xmpMM:RenditionClass>default</xmpMM:RenditionClass>\n"+
		"</rdf:Description>\n%s</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>\n", creator, at, producer, uuid, claims)
	return []byte(b.String())
}

// What a file claims to be.
const (
	claimA = `<rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"><pdfaid:part>2</pdfaid:part><pdfaid:conformance>A</pdfaid:conformance></rdf:Description>` + "\n"
	claimX = `<rdf:Description rdf:about="" xmlns:pdfxid="http://www.npes.org/pdfx/ns/id/"><pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion></rdf:Description>` + "\n"
)

func escaped(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // a builder takes all
	return b.String()
}
