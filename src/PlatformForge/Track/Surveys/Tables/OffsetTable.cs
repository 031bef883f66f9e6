using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Reads offsets from a stretched string.</summary>
internal static class OffsetTable
{
    /// <summary>The readings of one source in layout millimetres; fewer than the rows where some are at fault.</summary>
    public static IReadOnlyList<PlaceReading> Read(OffsetsSpec spec, SurveySource source, List<Finding> findings)
    {
        var table = SurveyTable.Read(source, spec.Key, [TableColumn.Distance, TableColumn.Offset], TableColumn.Side, -1, findings);
        if (table is null)
        {
            return [];
        }

        var along = Point2.FromAngle(spec.StringHeading);
        var readings = new List<PlaceReading>(table.Lines.Length);
        for (int r = 0; r < table.Lines.Length; r++)
        {
            double distance = table.Columns[0][r], offset = table.Columns[1][r];
            if (r > 0 && distance <= table.Columns[0][r - 1])
            {
                findings.Add(Disorder(spec.Key, source, table, r, "Distance"));
            }

            if (SideOf(table.Words?[r], spec.Side) is not { } side)
            {
                findings.Add(Finding.Error("PF2110", spec.Key, $"'{TableNumber.Shown(table.Words![r])}' is no side of the string.",
                    "Write left or right, seen along the string.") with
                { File = source.File, Line = table.Lines[r] });
                continue;
            }

            var foot = spec.StringStart + (along * distance);
            var square = along.Left * (int)side;
            readings.Add(new(source.File, table.Lines[r], table.Units[1], foot + (square * offset), source.Measured.FromCentre,
                new(distance, offset, foot, square)));
        }

        return readings;
    }

    /// <summary>A row that does not come after the one before it.</summary>
    /// <param name="key">Key of the survey.</param>
    /// <param name="source">The file.</param>
    /// <param name="table">Its columns.</param>
    /// <param name="row">Index of the row.</param>
    /// <param name="what">What the first column holds, as a sentence begins with it.</param>
    /// <param name="counted">Whether it holds plain counts.</param>
    internal static Finding Disorder(string key, SurveySource source, SurveyTable table, int row, string what, bool counted = false)
    {
        string sign = counted ? "" : " " + table.Units[0].Sign();
        double unit = table.Units[0].Millimetres(), here = table.Columns[0][row] / unit, before = table.Columns[0][row - 1] / unit;
        var finding = table.Columns[0][row] == table.Columns[0][row - 1]
            ? Finding.Error("PF2107", key, Invariant($"{what} {here:0.###}{sign} is given a second time; line {table.Lines[row - 1]} has it already."),
                "Keep one of the two readings, or their mean.")
            : Finding.Error("PF2106", key, Invariant($"{what} {here:0.###}{sign} comes after {before:0.###}{sign} of line {table.Lines[row - 1]}."),
                "List the readings in order along the track.");
        return finding with { File = source.File, Line = table.Lines[row] };
    }

    private static Hand? SideOf(string? word, Hand usual) => word?.ToLowerInvariant() switch
    {
        null or "" => usual,
        "left" or "l" => Hand.Left,
        "right" or "r" => Hand.Right,
        _ => null,
    };
}
