using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Which columns of a table hold what is asked for, and in which units.</summary>
/// <param name="table">The table.</param>
/// <param name="source">The file that it was cut from.</param>
/// <param name="key">Key of the survey in the project file.</param>
/// <param name="faults">Receives what is wrong.</param>
internal sealed class ColumnChoice(TableText table, SurveySource source, string key, TableFaults faults)
{
    private readonly (string Word, string? Unit)[] heads = [.. table.Headers.Select(TableColumn.Split)];

    /// <summary>Place of each column of figures, from 0; null where one is missing or headed twice.</summary>
    public int[]? Places(TableColumn[] figures, TableColumn? word)
    {
        int[] places = [.. figures.Select(Place)];
        for (int i = 0; i < figures.Length; i++)
        {
            if (places[i] < 0)
            {
                string found = string.Join(", ", table.Headers.Select(h => $"'{TableNumber.Shown(h)}'"));
                string message = $"No column is headed '{figures[i].Name}'; the first row has {found}.";
                faults.Add(Finding.Error("PF2102", key, message, Example(figures)), table.HeaderRow);
            }
        }

        return AnyTwice(word is null ? figures : [.. figures, word]) || places.Contains(-1) ? null : places;
    }

    private bool AnyTwice(TableColumn[] columns)
    {
        bool twice = false;
        foreach (var column in columns)
        {
            int[] same = Same(column);
            if (same.Length > 1)
            {
                twice = true;
                string one = TableNumber.Shown(table.Headers[same[0]]), other = TableNumber.Shown(table.Headers[same[1]]);
                faults.Add(Finding.Error("PF2133", key, $"Columns '{one}' and '{other}' both mean the {column.Name}.",
                    "Leave one of them out, or head it with another word."), table.HeaderRow, same[1] + 1);
            }
        }

        return twice;
    }

    /// <summary>Unit of each column: its header's, otherwise the file's.</summary>
    /// <param name="figures">Columns of lengths.</param>
    /// <param name="places">Their places.</param>
    /// <param name="counts">Index of a column of plain counts, which has none; -1 where there is none such.</param>
    public LengthUnit[] Units(TableColumn[] figures, int[] places, int counts)
    {
        var units = new LengthUnit[figures.Length];
        for (int i = 0; i < figures.Length; i++)
        {
            string? stated = heads[places[i]].Unit;
            if (i == counts && stated is not null)
            {
                string message = $"Column '{figures[i].Name}' is in {TableNumber.Shown(stated)}, but the survey has a spacing, "
                    + "which is for stations that are only numbered.";
                faults.Add(Finding.Error("PF2128", key, message, "Leave spacing out, or take the unit off the header."), table.HeaderRow, places[i] + 1);
                continue;
            }

            if ((stated is null ? source.Unit : LengthUnits.Named(stated)) is { } unit)
            {
                units[i] = unit;
            }
            else if (i != counts)
            {
                string what = stated is null ? "states no unit" : $"states the unknown unit '{TableNumber.Shown(stated)}'";
                faults.Add(Finding.Error("PF2109", key, $"Column '{figures[i].Name}' {what}.",
                    "Write mm, cm, m, in or ft in brackets after the header, or give unit = \"mm\" in the project file."), table.HeaderRow, places[i] + 1);
            }
        }

        return units;
    }

    /// <summary>Tells a unit that no column takes, since all state their own: it is at odds with the file where they state another.</summary>
    public void HoldAgainstGiven(LengthUnit[] units, int[] places, int counts)
    {
        if (!source.UnitStated || source.Unit is not { } given || places.Where((p, i) => i != counts && heads[p].Unit is null).Any())
        {
            return;
        }

        int odd = Array.FindIndex(units, u => u != given);
        odd = odd == counts ? Array.FindIndex(units, odd + 1, u => u != given) : odd;
        if (odd >= 0)
        {
            string header = TableNumber.Shown(table.Headers[places[odd]]);
            faults.Add(Finding.Warning("PF2147", key, $"The project file gives unit = \"{given.Sign()}\", but column '{header}' is in {units[odd].Sign()}.",
                "The header is believed. Leave the unit out of the project file, or mend the header.", FaultKind.Input), table.HeaderRow, places[odd] + 1);
        }
    }

    /// <summary>Place of a column, from 0; -1 where the table has none. In the order of its words, so that a proper name goes before a stand-in
    /// such as x.</summary>
    public int Place(TableColumn column)
    {
        foreach (string word in column.Words)
        {
            int at = Array.FindIndex(heads, h => h.Word == word);
            if (at >= 0)
            {
                return at;
            }
        }

        return -1;
    }

    // Columns that are headed as one and the same thing; stand-ins count where there is no proper word.
    private int[] Same(TableColumn column)
    {
        int[] Of(Func<string, bool> taken) =>
            [.. Enumerable.Range(0, heads.Length).Where(i => column.Words.Contains(heads[i].Word, StringComparer.Ordinal) && taken(heads[i].Word))];
        int[] proper = Of(w => !column.StandIns.Contains(w, StringComparer.Ordinal));
        return proper.Length > 0 ? proper : Of(_ => true);
    }

    /// <summary>How to head the columns.</summary>
    public static string Example(TableColumn[] figures) => $"Head the columns: {string.Join(';', figures.Select(f => f.Name))}.";
}
