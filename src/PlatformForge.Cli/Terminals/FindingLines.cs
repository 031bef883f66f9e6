using PlatformForge.Units;

namespace PlatformForge.Cli.Terminals;

/// <summary>Findings as text: place, weight, code and key on one line, what and remedy below.</summary>
internal static class FindingLines
{
    private const string Red = "\u001b[31m", Yellow = "\u001b[33m", Cyan = "\u001b[36m", Plain = "\u001b[0m";

    public static void Write(TextWriter writer, Finding finding, bool colour)
    {
        var (word, ink) = finding.Severity switch
        {
            Severity.Error => ("error", Red),
            Severity.Warning => ("warning", Yellow),
            _ => ("note", Cyan),
        };
        string place = PlainLine.Of(PlaceOf(finding)), inked = colour ? ink + word + Plain : word;
        string key = finding.Key.Length == 0 ? "" : "  " + PlainLine.Of(finding.Key);
        writer.WriteLine($"{(place.Length == 0 ? "" : place + "  ")}{inked} {finding.Code}{key}");
        writer.WriteLine("  " + PlainLine.Of(finding.Message));
        if (finding.Remedy.Length > 0)
        {
            writer.WriteLine("  " + PlainLine.Of(finding.Remedy));
        }
    }

    private static string PlaceOf(Finding finding) => finding.File is null ? ""
        : finding.Line == 0 ? finding.File
        : finding.Column == 0 ? FormattableString.Invariant($"{finding.File}:{finding.Line}")
        : FormattableString.Invariant($"{finding.File}:{finding.Line}:{finding.Column}");
}
