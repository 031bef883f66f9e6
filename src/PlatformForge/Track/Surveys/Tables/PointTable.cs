using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Reads points in layout coordinates.</summary>
internal static class PointTable
{
    /// <summary>The readings of one source, in the order of the file.</summary>
    public static IReadOnlyList<PlaceReading> Read(PointsSpec spec, SurveySource source, List<Finding> findings)
    {
        var table = SurveyTable.Read(source, spec.Key, [TableColumn.X, TableColumn.Y], null, -1, findings);
        return table is null
            ? []
            : [.. table.Lines.Select((line, r) => new PlaceReading(source.File, line, table.Units[0], new(table.Columns[0][r], table.Columns[1][r]),
                source.Measured.FromCentre))];
    }
}
