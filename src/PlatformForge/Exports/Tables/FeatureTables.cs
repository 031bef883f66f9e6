using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Tables;

/// <summary>Tables that features bring, as CSV files: those of one name are one file.</summary>
internal static class FeatureTables
{
    /// <summary>Names and what makes them, in the order of the features.</summary>
    public static IEnumerable<(string Name, Func<byte[]> Make)> Of(PlatformPlan plan) =>
        plan.Features.SelectMany(f => f.Tables).GroupBy(t => t.Name, StringComparer.Ordinal).Select(g => (g.Key, (Func<byte[]>)(() => Write([.. g]))));

    private static byte[] Write(IReadOnlyList<FeatureTable> tables)
    {
        var csv = new CsvText([.. tables[0].Headings]);
        foreach (var row in tables.SelectMany(t => t.Rows))
        {
            csv.Row([.. row.Select(Cell)]);
        }

        return csv.ToBytes();
    }

    private static string Cell(TableCell cell) => cell.Figure is { } figure ? PlatformForge.Exports.Drawings.Ink.Figures.Fixed(figure, cell.Digits)
        : cell.Words;
}
