using System.Text;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports;

namespace PlatformForge.Tests.Exports;

/// <summary>The report in words and tables, as a run writes it.</summary>
internal static class ReportWords
{
    /// <summary>The text of the file, of a run that writes nothing beside it.</summary>
    public static string Of(Dossier dossier) => Encoding.UTF8.GetString(
        ReportFiles.Of(dossier, new() { Report = false, Tables = false, Masks = false }, [], new HashSet<string>())
            .First(f => f.Path == ReportFiles.Words).Make());
}
