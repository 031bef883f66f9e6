namespace PlatformForge.Exports.Reports;

/// <summary>The report of a run: figures for programs, words for people.</summary>
public static class ReportWriter
{
    public static byte[] Json(Dossier dossier) => File(dossier, ReportFiles.Data);

    /// <summary>The same in words and tables, as Markdown that also reads well as plain text.</summary>
    public static byte[] Markdown(Dossier dossier) => File(dossier, ReportFiles.Words);

    private static byte[] File(Dossier dossier, string path) =>
        ReportFiles.Of(dossier, new() { Report = false, Tables = false, Masks = false }, [], new HashSet<string>()).First(f => f.Path == path).Bytes;
}
