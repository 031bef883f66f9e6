using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Reads the figures of a table's rows; of rows at fault the first are told one by one, the rest counted.</summary>
/// <param name="table">The table.</param>
/// <param name="key">Key of the survey in the project file.</param>
/// <param name="faults">Receives what is wrong.</param>
internal sealed class RowFigures(TableText table, string key, TableFaults faults)
{
    private int count;

    /// <summary>All rows as millimetres.</summary>
    /// <param name="places">Places of the columns, from 0.</param>
    /// <param name="units">Their units.</param>
    /// <param name="word">Place of a column of words; -1 for none.</param>
    /// <param name="counts">Index of a column that holds plain counts; -1 for none.</param>
    public SurveyTable Read(int[] places, LengthUnit[] units, int word, int counts)
    {
        int n = table.Rows.Count;
        var columns = places.Select(_ => new double[n]).ToArray();
        var lines = new int[n];
        var words = word < 0 ? null : new string[n];
        for (int r = 0; r < n; r++)
        {
            var row = table.Rows[r];
            lines[r] = row.Line;
            if (!IsWhole(row))
            {
                Array.ForEach(columns, c => c[r] = double.NaN);
                continue;
            }

            for (int i = 0; i < places.Length; i++)
            {
                columns[i][r] = Length(row, places[i], i == counts ? 1 : units[i].Millimetres());
            }

            if (words is not null)
            {
                words[r] = row.Fields[word];
            }
        }

        TellTheRest();
        string first = table.Headers[places[0]];
        return new(lines, columns, units, words) { HeaderRow = table.HeaderRow, First = (first, places[0] + 1, TableColumn.Split(first).Unit is not null) };
    }

    private bool IsWhole(TableRow row)
    {
        if (row.Fields.Length == table.Headers.Length)
        {
            return true;
        }

        bool comma = table.Delimiter == ',' && row.Fields.Length > table.Headers.Length;
        Add("PF2104", Invariant($"The row has {row.Fields.Length} fields, the header {table.Headers.Length}."),
            comma ? "Figures with a decimal comma need semicolons or tabs between the columns." : "Give every column of the header a field.", row.Line, 0);
        return false;
    }

    // What is refused is no figure for anything that is told after it.
    private double Length(TableRow row, int place, double unit)
    {
        string remedy = "Write a plain number such as 12.5 or 12,5.";
        string? why = TableNumber.Fault(row.Fields[place], out double value);
        double length = value * unit;
        if (why is null && Math.Abs(length) > SurveyTable.Longest)
        {
            why = Invariant($"A length of over {SurveyTable.Longest:0} mm is longer than a model railway.");
            remedy = Invariant($"The largest length taken is {SurveyTable.Longest:0} mm; check the unit and the decimal mark.");
        }

        if (why is null)
        {
            return length;
        }

        Add("PF2103", why, remedy, row.Line, place + 1);
        return double.NaN;
    }

    private void Add(string code, string message, string remedy, int line, int column)
    {
        if (++count <= SurveyTable.FaultsTold)
        {
            faults.Add(Finding.Error(code, key, message, remedy), line, column);
        }
    }

    private void TellTheRest()
    {
        if (count > SurveyTable.FaultsTold)
        {
            faults.Add(Finding.Error("PF2103", key, Invariant($"{count - SurveyTable.FaultsTold} more rows are at fault."),
                "Mend the first ones; the others are often the same slip."), 0);
        }
    }
}
