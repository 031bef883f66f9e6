using System.Collections.Frozen;
using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Workshop;

namespace PlatformForge.Exports.Reports;

/// <summary>The report of a run: figures for programs, words for people.</summary>
public static class ReportWriter
{
    public static byte[] Json(Dossier dossier) =>
        ReportFiles.Of(dossier, new() { Report = false, Tables = false, Masks = false }, [], new HashSet<string>())
            .First(f => f.Path == ReportFiles.Data).Make();

    /// <summary>The same as plain text for a terminal.</summary>
    public static string Plain(Dossier dossier)
    {
        var names = OutputFiles.Names(dossier);
        return PlainPage.Of(ReportBook.Of(dossier, [.. dossier.Platforms.Select((p, i) =>
            new ReportSource(dossier, p, names[i], BenchTables.Of(dossier, p, names[i]), new([], _ => false), false, false))], FrozenSet<string>.Empty));
    }
}
