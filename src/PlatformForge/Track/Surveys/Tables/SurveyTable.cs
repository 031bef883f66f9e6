using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

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
        var faults = new TableFaults(source.File, findings);
        if (Cut(source, key, figures, faults) is not { } table)
        {
            return null;
        }

        var choice = new ColumnChoice(table, source, key, faults);
        if (choice.Places(figures, word) is not { } places)
        {
            return null;
        }

        var units = choice.Units(figures, places, counts);
        choice.HoldAgainstGiven(units, places, counts);
        return new RowFigures(table, key, faults).Read(places, units, word is null ? -1 : choice.Place(word), counts);
    }

    // The text as rows and fields; null, and told, where it is none that can be read.
    private static TableText? Cut(SurveySource source, string key, TableColumn[] figures, TableFaults faults)
    {
        if (PlainText.Fault(source.Text) is { } unfit)
        {
            faults.Add(Finding.Error("PF2101", key, unfit, "Save the readings as a text file with commas, semicolons or tabs between the columns."), 1);
            return null;
        }

        if (TableBounds.Beyond(source.Text) is { } beyond)
        {
            faults.Add(Finding.Error("PF2150", key, beyond.Message, beyond.Remedy), beyond.Line);
            return null;
        }

        if (TableText.Cut(source.Text) is { } table)
        {
            return table;
        }

        faults.Add(Finding.Error("PF2101", key, "The file holds no readings.", ColumnChoice.Example(figures)), 1);
        return null;
    }
}
