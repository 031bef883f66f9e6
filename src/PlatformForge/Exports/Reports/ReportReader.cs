using System.Text.Json;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>Reads a report of ours back.</summary>
public static class ReportReader
{
    /// <summary>Reads report.json; PF7320 when it is of another form, or anything in it is missing or unknown.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="name">What to call it in findings.</param>
    public static Outcome<ReportDocument> Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (ManifestForm.OtherFormat(bytes, ReportDocument.OurFormat) is { } other)
        {
            return Fault(name, Invariant($"is not of {Manifest.OurTool}, format {ReportDocument.OurFormat}{other}"));
        }

        try
        {
            return Outcome.Of(JsonForms.Read(bytes, ReportJson.Forms.ReportDocument));
        }
        catch (JsonException fault)
        {
            return Fault(name, JsonFault.Words(fault));
        }
    }

    private static Outcome<ReportDocument> Fault(string name, string what) =>
        Outcome.Fault<ReportDocument>(Finding.Error("PF7320", "", Invariant($"The report '{name}' {what}."), "Build the project again.", FaultKind.Mesh));
}
