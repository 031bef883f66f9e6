using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Reports;

/// <summary>The report of a run: figures for programs, words for people.</summary>
public static class ReportWriter
{
    public static byte[] Json(Dossier dossier) => JsonForms.ToBytes(ReportDocument.Of(dossier), ReportJson.Forms.ReportDocument);

    /// <summary>The same in words and tables, as Markdown that also reads well as plain text.</summary>
    public static byte[] Markdown(Dossier dossier) => new ReportText(dossier).ToBytes();
}
