using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>A survey file as columns of millimetres, with all that is wrong with it told by row and column.</summary>
/// <param name="Lines">Line of each row.</param>
/// <param name="Columns">Figures in mm by column asked for, each as long as <paramref name="Lines"/>.</param>
/// <param name="Units">Unit of each column as written.</param>
/// <param name="Words">Text of the optional column, or null.</param>
internal sealed record SurveyTable(int[] Lines, double[][] Columns, LengthUnit[] Units, string[]? Words)
{
    /// <summary>Line of the header.</summary>
    public int HeaderRow { get; init; }

    /// <summary>The first column asked for as it is headed, its place from 1, and whether its header states a unit.</summary>
    public (string Header, int Place, bool Stated) First { get; init; }

    /// <summary>Greatest figure taken, mm.</summary>
    public const double Longest = TrackLayer.LongestTrack;

    /// <summary>Row faults told one by one; the rest are counted.</summary>
    public const int FaultsTold = InputLimits.MessagesOfAKind;

    /// <summary>Reads the columns asked for out of a source.</summary>
    /// <param name="source">The file.</param>
    /// <param name="key">Key of the survey in the project file.</param>
    /// <param name="figures">Columns of lengths.</param>
    /// <param name="word">A column of words that may be missing.</param>
    /// <param name="counts">Index of a column that holds plain counts, taken without a unit; -1 for none.</param>
    /// <param name="findings">Receives what is wrong.</param>
    public static SurveyTable? Read(SurveySource source, string key, TableColumn[] figures, TableColumn? word, int counts, List<Finding> findings)
    {
        Finding At(Finding finding, int line, int column = 0) => finding with { File = source.File, Line = line, Column = column };
        if (PlainText.Fault(source.Text) is { } unfit)
        {
            findings.Add(At(Finding.Error("PF2101", key, unfit, "Save the readings as a text file with commas, semicolons or tabs between the columns."), 1));
            return null;
        }

        if (TableBounds.Beyond(source.Text) is { } beyond)
        {
            findings.Add(At(Finding.Error("PF2150", key, beyond.Message, beyond.Remedy), beyond.Line));
            return null;
        }

        if (TableText.Cut(source.Text) is not { } table)
        {
            findings.Add(At(Finding.Error("PF2101", key, "The file holds no readings.", Example(figures)), 1));
            return null;
        }

        var heads = table.Headers.Select(TableColumn.Split).ToArray();
        int[] places = [.. figures.Select(f => Place(f, heads))];
        for (int i = 0; i < figures.Length; i++)
        {
            if (places[i] < 0)
            {
                string found = string.Join(", ", table.Headers.Select(h => $"'{TableNumber.Shown(h)}'"));
                findings.Add(At(Finding.Error("PF2102", key, $"No column is headed '{figures[i].Name}'; the first row has {found}.", Example(figures)), table.HeaderRow));
            }
        }

        bool twice = false;
        foreach (var column in word is null ? figures : [.. figures, word])
        {
            int[] same = Same(column, heads);
            if (same.Length > 1)
            {
                twice = true;
                findings.Add(At(Finding.Error("PF2133", key, $"Columns '{TableNumber.Shown(table.Headers[same[0]])}' and '{TableNumber.Shown(table.Headers[same[1]])}' both mean the {column.Name}.", "Leave one of them out, or head it with another word."), table.HeaderRow, same[1] + 1));
            }
        }

        if (twice || places.Contains(-1))
        {
            return null;
        }

        var units = new LengthUnit[figures.Length];
        for (int i = 0; i < figures.Length; i++)
        {
            string? stated = heads[places[i]].Unit;
            if (i == counts && stated is not null)
            {
                findings.Add(At(Finding.Error("PF2128", key, $"Column '{figures[i].Name}' is in {TableNumber.Shown(stated)}, but the survey has a spacing, which is for stations that are only numbered.", "Leave spacing out, or take the unit off the header."), table.HeaderRow, places[i] + 1));
                continue;
            }

            if ((stated is null ? source.Unit : LengthUnits.Named(stated)) is { } unit)
            {
                units[i] = unit;
            }
            else if (i != counts)
            {
                string what = stated is null ? "states no unit" : $"states the unknown unit '{TableNumber.Shown(stated)}'";
                findings.Add(At(Finding.Error("PF2109", key, $"Column '{figures[i].Name}' {what}.", "Write mm, cm, m, in or ft in brackets after the header, or give unit = \"mm\" in the project file."), table.HeaderRow, places[i] + 1));
            }
        }

        UnitAtOdds(source, key, table, places, heads, units, counts, (f, l, c) => findings.Add(At(f, l, c)));
        return Fill(table, places, units, word is null ? -1 : Place(word, heads), counts, (f, l, c) => findings.Add(At(f, l, c)), key);
    }

    // A unit that no column takes, since all state their own, is at odds with the file where they state another.
    private static void UnitAtOdds(SurveySource source, string key, TableText table, int[] places, (string Word, string? Unit)[] heads, LengthUnit[] units, int counts, Action<Finding, int, int> tell)
    {
        if (!source.UnitStated || source.Unit is not { } given || places.Where((p, i) => i != counts && heads[p].Unit is null).Any())
        {
            return;
        }

        int odd = Array.FindIndex(units, u => u != given);
        odd = odd == counts ? Array.FindIndex(units, odd + 1, u => u != given) : odd;
        if (odd >= 0)
        {
            tell(Finding.Warning("PF2147", key, $"The project file gives unit = \"{given.Sign()}\", but column '{TableNumber.Shown(table.Headers[places[odd]])}' is in {units[odd].Sign()}.", "The header is believed. Leave the unit out of the project file, or mend the header.", FaultKind.Input),
                table.HeaderRow, places[odd] + 1);
        }
    }

    private static SurveyTable Fill(TableText table, int[] places, LengthUnit[] units, int word, int counts, Action<Finding, int, int> fault, string key)
    {
        int n = table.Rows.Count, faults = 0;
        var columns = places.Select(_ => new double[n]).ToArray();
        var lines = new int[n];
        var words = word < 0 ? null : new string[n];
        void Add(string code, string message, string remedy, int line, int column)
        {
            if (++faults <= FaultsTold)
            {
                fault(Finding.Error(code, key, message, remedy), line, column);
            }
        }

        for (int r = 0; r < n; r++)
        {
            var row = table.Rows[r];
            lines[r] = row.Line;
            if (row.Fields.Length != table.Headers.Length)
            {
                bool comma = table.Delimiter == ',' && row.Fields.Length > table.Headers.Length;
                Add("PF2104", Invariant($"The row has {row.Fields.Length} fields, the header {table.Headers.Length}."),
                    comma ? "Figures with a decimal comma need semicolons or tabs between the columns." : "Give every column of the header a field.", row.Line, 0);
                foreach (double[] column in columns)
                {
                    column[r] = double.NaN;
                }

                continue;
            }

            for (int i = 0; i < places.Length; i++)
            {
                string remedy = "Write a plain number such as 12.5 or 12,5.";
                string? why = TableNumber.Fault(row.Fields[places[i]], out double value);
                columns[i][r] = value * (i == counts ? 1 : units[i].Millimetres());
                if (why is null && Math.Abs(columns[i][r]) > Longest)
                {
                    why = Invariant($"A length of over {Longest:0} mm is longer than a model railway.");
                    remedy = Invariant($"The largest length taken is {Longest:0} mm; check the unit and the decimal mark.");
                }

                if (why is not null)
                {
                    // What is refused is no figure for anything that is told after it.
                    columns[i][r] = double.NaN;
                    Add("PF2103", why, remedy, row.Line, places[i] + 1);
                }
            }

            if (words is not null)
            {
                words[r] = row.Fields[word];
            }
        }

        if (faults > FaultsTold)
        {
            fault(Finding.Error("PF2103", key, Invariant($"{faults - FaultsTold} more rows are at fault."), "Mend the first ones; the others are often the same slip."),
                0, 0);
        }

        return new(lines, columns, units, words) { HeaderRow = table.HeaderRow, First = (table.Headers[places[0]], places[0] + 1, TableColumn.Split(table.Headers[places[0]]).Unit is not null) };
    }

    private static int Place(TableColumn column, (string Word, string? Unit)[] heads)
    {
        // In the order of the words, so that a proper name goes before a stand-in such as x.
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
    private static int[] Same(TableColumn column, (string Word, string? Unit)[] heads)
    {
        int[] Of(Func<string, bool> taken) => [.. Enumerable.Range(0, heads.Length).Where(i => column.Words.Contains(heads[i].Word, StringComparer.Ordinal) && taken(heads[i].Word))];
        int[] proper = Of(w => !column.StandIns.Contains(w, StringComparer.Ordinal));
        return proper.Length > 0 ? proper : Of(_ => true);
    }

    private static string Example(TableColumn[] figures) => $"Head the columns: {string.Join(';', figures.Select(f => f.Name))}.";
}
