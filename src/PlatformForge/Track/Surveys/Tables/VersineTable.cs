using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Reads versines.</summary>
internal static class VersineTable
{
    /// <summary>The readings of a source; stations that are only numbered are multiplied by the spacing.</summary>
    public static IReadOnlyList<VersineReading> Read(VersinesSpec spec, SurveySource source, List<Finding> findings)
    {
        var table = SurveyTable.Read(source, spec.Key, [TableColumn.Station, TableColumn.Versine], null, spec.Spacing is null ? -1 : 0, findings);
        if (table is null)
        {
            return [];
        }

        if (NoDistances(spec, table) is { } unfit)
        {
            findings.Add(unfit with { File = source.File, Line = table.HeaderRow, Column = table.First.Place });
            return [];
        }

        var readings = new List<VersineReading>(table.Lines.Length);
        for (int r = 0; r < table.Lines.Length; r++)
        {
            if (r > 0 && table.Columns[0][r] <= table.Columns[0][r - 1])
            {
                findings.Add(OffsetTable.Disorder(spec.Key, source, table, r, "Station", spec.Spacing is not null));
            }

            double versine = table.Columns[1][r];
            if (Math.Abs(versine) >= spec.Chord / 2)
            {
                findings.Add(Finding.Error("PF2117", spec.Key, Invariant($"A versine of {Math.Abs(versine):0.##} mm over a chord of {spec.Chord:0.#} mm would ")
                    + "be more than half a circle.", "Check the unit of the versines and the length of the chord.")
                    with
                { File = source.File, Line = table.Lines[r] });
                continue;
            }

            readings.Add(new(source.File, table.Lines[r], table.Units[1], table.Columns[0][r] * (spec.Spacing ?? 1),
                versine * (int)spec.Positive)
            { Positive = spec.Positive });
        }

        return readings;
    }

    // Stations nearer to one another than this part of the chord, all of them under one chord, are numbers or in another unit.
    private const double LeastStep = 0.05;

    /// <summary>A fault where the stations are only numbers and nothing says how far apart they are, or cannot be the distances stated.</summary>
    private static Finding? NoDistances(VersinesSpec spec, SurveyTable table)
    {
        string header = TableNumber.Shown(table.First.Header);
        string remedy = Invariant($"Stations that are only numbered need spacing = {spec.Chord / 2:0.##} or what they were apart, in mm");
        if (spec.Spacing is null && !table.First.Stated && TableColumn.Split(table.First.Header).Word is "no" or "number")
        {
            return Finding.Error("PF2148", $"{spec.Key}.spacing", $"Column '{header}' numbers the stations, and no spacing says how far apart they are.",
                $"{remedy}; distances need a header such as station (mm).");
        }

        double[] stations = [.. table.Columns[0].Where(double.IsFinite).Select(s => s * (spec.Spacing ?? 1))];
        double covered = stations.Length < 2 ? 0 : stations.Max() - stations.Min(), step = covered / (stations.Length - 1);
        return covered > 0 && covered < spec.Chord && step < LeastStep * spec.Chord
            ? Finding.Error("PF2148", spec.Spacing is null ? spec.Key : $"{spec.Key}.spacing",
                Invariant($"Column '{header}' has {stations.Length} stations {step:0.##} mm apart, all within the chord of {spec.Chord:0.##} mm: ")
                    + "these are no distances in mm.",
                remedy + (spec.Spacing is null ? "; distances need their unit, such as station (cm)." : "."))
            : null;
    }
}
