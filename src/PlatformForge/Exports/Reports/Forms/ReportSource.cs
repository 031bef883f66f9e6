using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Tables;
using PlatformForge.Exports.Workshop;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>What the chapters of one platform are written from.</summary>
/// <param name="Dossier">Everything known.</param>
/// <param name="Platform">The platform.</param>
/// <param name="Name">Its name for files.</param>
/// <param name="Bench">Its tables for the workbench.</param>
/// <param name="Images">Drawings and pictures.</param>
/// <param name="HasTables">Whether tables are written as files too.</param>
/// <param name="HasMasks">Whether masks are.</param>
internal sealed record ReportSource(Dossier Dossier, PlatformDossier Platform, string Name, BenchTables Bench, ReportImages Images, bool HasTables,
    bool HasMasks)
{
    /// <summary>Path of a table's file; null where none is written.</summary>
    public string? File(string table, PlatformDossier? face = null) =>
        HasTables ? Invariant($"tables/{(face is null ? Name : OutputFiles.Named(Platform, face, Name))}-{table}.csv") : null;

    /// <summary>What is added to a title to tell one face of an island from the other.</summary>
    public string Of(PlatformDossier face) => Platform.Plan.Spec.IsIsland ? ", track " + face.Track : "";

    /// <summary>A table of the workbench, where it has rows.</summary>
    public void Bring(DocumentBuilder to, string name)
    {
        if (Bench[name] is { } table)
        {
            to.Table(table.Title, table.Headings, table.Rows.Select(r => (IReadOnlyList<string>)[.. r.Select(WorkTable.Text)]), table.Basis, File(name));
        }
    }

    /// <summary>Some columns of a table that is a file, under words for people.</summary>
    public static void Bring(DocumentBuilder to, string title, CsvText csv, IReadOnlyList<(string Key, string Heading)> columns, string basis,
        string? file, Func<int, bool>? keeps = null)
    {
        int[] at = [.. columns.Select(c => csv.Headings.ToList().IndexOf(c.Key))];
        to.Table(title, [.. columns.Select(c => c.Heading)], csv.Rows.Where((_, i) => keeps is null || keeps(i)).Select(r
            => (IReadOnlyList<string>)[.. at.Select(i => r[i])]), basis, file);
    }

    /// <summary>Steps and cautions of a stage of the work.</summary>
    public void Stage(DocumentBuilder to, WorkStage stage)
    {
        to.Heading(3, WorkList.Called(stage));
        to.List(WorkList.Steps(stage, Dossier, Platform), ListKind.Steps);
        to.List(Cautions.At(stage, WorkList.HasWires(Platform)), ListKind.Cautions);
    }
}
