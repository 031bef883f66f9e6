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

        var readings = new List<VersineReading>(table.Lines.Length);
        for (int r = 0; r < table.Lines.Length; r++)
        {
            if (r > 0 && !(table.Columns[0][r] > table.Columns[0][r - 1]))
            {
                findings.Add(OffsetTable.Disorder(spec.Key, source, table, r));
            }

            double versine = table.Columns[1][r];
            if (Math.Abs(versine) >= spec.Chord / 2)
            {
                findings.Add(Finding.Error("PF2117", spec.Key, Invariant($"A versine of {Math.Abs(versine):0.##} mm over a chord of {spec.Chord:0.#} mm would be more than half a circle."), "Check the unit of the versines and the length of the chord.") with { File = source.File, Line = table.Lines[r] });
                continue;
            }

            readings.Add(new(source.File, table.Lines[r], table.Units[1], table.Columns[0][r] * (spec.Spacing ?? 1), versine * (int)spec.Positive));
        }

        return readings;
    }
}
