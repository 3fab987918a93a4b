package fonts

import "embed"

// Page is empty: what a browser loads holds each face once, as TrueType.
var Page embed.FS
