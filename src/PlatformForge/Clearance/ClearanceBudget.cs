namespace PlatformForge.Clearance;

/// <summary>
/// What is kept between the swept vehicles and the platform, entry by entry, in mm. The reach of an envelope plus
/// <see cref="Margin"/> is where a platform may begin.
/// </summary>
/// <param name="Lines">All entries in the order they are shown; at least the running clearance.</param>
/// <param name="Play">Play swept with the vehicles; its amounts appear among the lines as <see cref="BudgetPlacing.Swept"/>.</param>
/// <param name="Rule">How tolerances are put together: the sum unless the user says otherwise.</param>
public sealed record ClearanceBudget(IReadOnlyList<BudgetLine> Lines, RunningPlay Play, BudgetRule Rule = BudgetRule.Sum)
{
    /// <summary>The distance the user wants to see when everything is at its worst, mm.</summary>
    public double Running => Total(BudgetPlacing.Wanted);

    /// <summary>Wanted distance and tolerances added up, mm.</summary>
    public double Sum => Running + Total(BudgetPlacing.Added);

    /// <summary>Wanted distance in full and the tolerances as root of squares, mm. Play is not chance and stays in the sweep in full.</summary>
    public double RootOfSquares =>
        Running + Math.Sqrt(Lines.Where(l => l.Placing == BudgetPlacing.Added).Sum(l => l.AmountMm * l.AmountMm));

    /// <summary>What is added to the reach, by the rule chosen, mm.</summary>
    public double Margin => Rule == BudgetRule.Sum ? Sum : RootOfSquares;

    /// <summary>
    /// The usual budget. Amounts in mm; the bases are shown to the user beside them.
    /// </summary>
    public static ClearanceBudget Of(double running, double print = 0, double fitting = 0, double laying = 0, double survey = 0, RunningPlay? play = null)
    {
        play ??= RunningPlay.None;
        var lines = new List<BudgetLine> { new("running clearance", running, "wanted", BudgetPlacing.Wanted) };
        void Add(string name, double amount, string basis, BudgetPlacing placing)
        {
            if (amount != 0)
            {
                lines.Add(new(name, amount, basis, placing));
            }
        }

        Add("print tolerance", print, "stated", BudgetPlacing.Added);
        Add("fitting of the sections", fitting, "stated", BudgetPlacing.Added);
        Add("track laying", laying, "stated", BudgetPlacing.Added);
        Add("survey residual", survey, "from the survey", BudgetPlacing.Added);
        Add("wheelset play", play.Wheelset, "each way, swept with the vehicles", BudgetPlacing.Swept);
        Add("pivot play", play.Pivot, "each way, swept with the vehicles", BudgetPlacing.Swept);
        return new(lines, play);
    }

    private double Total(BudgetPlacing placing) => Lines.Where(l => l.Placing == placing).Sum(l => l.AmountMm);
}
