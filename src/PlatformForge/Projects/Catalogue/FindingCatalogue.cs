using System.Text;

namespace PlatformForge.Projects.Catalogue;

/// <summary>
/// Every code that a finding can have, with what it is raised for and what mends it. A new finding gets its line in the file
/// of its block; tests hold the source and the page of findings against it.
/// </summary>
public static class FindingCatalogue
{
    private static readonly (string Title, FindingEntry[] Entries)[] Blocks =
    [
        ("Project file", ProjectEntries.All),
        ("Track", TrackEntries.All),
        ("Vehicles and clearance", ClearanceEntries.All),
        ("Platforms", PlatformEntries.All),
        ("Sections", SectionEntries.All),
        ("Files", ExportEntries.All),
        ("Verification", VerificationEntries.All),
    ];

    private const string Head = """
        # Every finding, with its cure

        A finding has a code that is raised for one thing, a message with the figures at fault, and a remedy. This page is made by
        `platformforge findings --markdown`; a test holds it against the program.

        **A value that was tried**: where a finding is an error of the project and a key mends it, the program takes the value that
        it offers, runs the design with it, and looks whether the finding is gone and no new error has come; where that is not so
        it looks for another value. `--json` gives the value as `cure`, with the key as it would be written in the project file,
        and `"tried": true` where it passed. `"tried": false` is a value that the rule at fault computes, and no more: with
        warnings and notes, with errors that are only counted, where trying would take too long (the remedy says so), and where the
        finding goes and another comes next (the remedy names it). Where a code never offers a value, the reason stands beside its
        cure.


        """;

    /// <summary>All entries in order of code.</summary>
    public static IReadOnlyList<FindingEntry> Entries { get; } = [.. Blocks.SelectMany(b => b.Entries).OrderBy(e => e.Code, StringComparer.Ordinal)];

    /// <summary>The entry of a code, in any case of letters and with or without PF; null when there is none.</summary>
    public static FindingEntry? Find(string code) =>
        Entries.FirstOrDefault(e => string.Equals(
            e.Code,
            code,
            StringComparison.OrdinalIgnoreCase) || string.Equals(e.Code[2..], code, StringComparison.Ordinal));

    /// <summary>The page of findings, in Markdown with line feeds.</summary>
    public static string Page()
    {
        var page = new StringBuilder(Head.ReplaceLineEndings("\n"));
        foreach (var (title, entries) in Blocks)
        {
            page.Append("## ").Append(title).Append("\n\n| code | raised for | cure |\n|---|---|---|\n");
            foreach (var entry in entries)
            {
                page.Append("| ").Append(entry.Code).Append(" | ").Append(entry.RaisedFor).Append(" | ").Append(entry.Cure);
                page.Append(entry.NoValue is null ? "" : $" *No value: {char.ToLowerInvariant(entry.NoValue[0])}{entry.NoValue[1..]}*").Append(" |\n");
            }

            page.Append('\n');
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }
}
