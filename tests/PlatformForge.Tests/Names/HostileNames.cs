namespace PlatformForge.Tests.Names;

/// <summary>Names that a format, a spreadsheet, a browser or a file system would take for something else.</summary>
internal static class HostileNames
{
    public static readonly string[] All =
    [
        "=cmd|' /C calc'!A0", "+1+cmd", "-2+3", "@SUM(1)", "=HYPERLINK(\"http://example.invalid\",\"x\")", "\uFF1D1+1",
        "<script>alert(1)</script>", "</text><script/>", "]]>", "&amp;&lt;&#0;", "\" onload=\"x", "' or 1", "<!--", "%00", "--><svg onload=x>",
        "[x](http://example.invalid)", "![x](y.png)", "# not a heading", "| a | b |", "`code` **bold** _it_ ~~no~~", "http://example.invalid",
        "www.example.invalid", "1. one", "\\",
        "../../etc/passwd", "..\\..\\x", "/dev/null", "C:\\con", "con", "NUL", "aux", "lpt1", "COM9", "Prn", "a:b*c?d", ".hidden", "trailing.", "~", "-rf",
        "--output",
        "solid name", "solid", "Hält", "Ha\u0308lt", "Żółć", "Smørrebrød", "Straße", "Ærø", "Ελλάδα", "Москва", "北駅", "محطة", "🚂", "नमस्ते", "ﬁne",
        "İstanbul", "Việt Trì",
        "a,b;c", "x\u200By", new('w', 200), "{\"json\": [1]}", "${HOME} $(id) %PATH%", "'", "\"",
    ];

    /// <summary>Names that a project file may not have.</summary>
    public static readonly string[] Refused = ["a\nb", "a\u0000b", "\u001b[2J", "a\u202Etxt", "a\u2028b", "a\u2066b", " ", "", "\u007F", "a\rb", new('w', 201)];
}
