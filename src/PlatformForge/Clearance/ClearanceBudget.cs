using PlatformForge.Clearance.Vehicles;
using static System.FormattableString;

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

    /// <summary>Everything together, play too, as it stands between the guided points, all at its worst at once, mm.</summary>
    public double SumWithPlay => Sum + Total(BudgetPlacing.Swept);

    /// <summary>Everything together with tolerances and play as root of squares and the wanted distance in full, mm. For information: play
    /// is always swept in full.</summary>
    public double RootOfSquaresWithPlay =>
        Running + Math.Sqrt(Lines.Where(l => l.Placing != BudgetPlacing.Wanted).Sum(l => l.AmountMm * l.AmountMm));

    /// <summary>
    /// The usual budget. Amounts in mm; the bases are shown to the user beside them.
    /// </summary>
    /// <param name="running">Wanted distance.</param>
    /// <param name="print">How far a print may be off.</param>
    /// <param name="fitting">How far sections may be off when fixed.</param>
    /// <param name="laying">How far the track may lie off its line.</param>
    /// <param name="survey">What measuring left uncertain.</param>
    /// <param name="play">Play of the vehicles.</param>
    /// <param name="coping">Height of the coping above rail top, at which lean and cant are told beside their most.</param>
    /// <param name="tallest">Height above rail top of the highest part of any vehicle, where lean and cant cost most.</param>
    /// <param name="wheelsetBasis">How the side play of the wheels was found.</param>
    /// <param name="surveyBasis">Where the figure for the survey comes from.</param>
    public static ClearanceBudget Of(double running, double print = 0, double fitting = 0, double laying = 0, double survey = 0, RunningPlay? play = null,
        double coping = 0, double tallest = 0, string wheelsetBasis = "", string surveyBasis = "from the survey")
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
        Add(SurveyResidual, survey, surveyBasis, BudgetPlacing.Added);
        Add("wheelset play", play.Wheelset, wheelsetBasis + "each way, swept with the vehicles", BudgetPlacing.Swept);
        Add("pivot play", play.Pivot, "each way, swept with the vehicles", BudgetPlacing.Swept);
        Add("suspension roll", Math.Max(play.LeanAt(0), play.LeanAt(tallest)), Leaning(play.Roll, play.LeanAt, coping, tallest), BudgetPlacing.Swept);
        Add("cant", play.CantAt(tallest), Leaning(play.Cant, play.CantAt, coping, tallest), BudgetPlacing.Swept);
        return new(lines, play);
    }

    /// <summary>Name of the entry for what a survey leaves uncertain.</summary>
    public const string SurveyResidual = "survey residual";

    /// <summary>The same with what surveys leave uncertain, which is swept with each part at each place.</summary>
    /// <param name="along">How much it adds to the farthest reach along the platform: least and most, mm.</param>
    /// <param name="clear">Of which lines it holds, in words.</param>
    public ClearanceBudget WithSurveyed((double Least, double Most) along, string clear) => along.Most <= 0 ? this : this with
    {
        Lines = [.. Lines, new(SurveyResidual, along.Most, Invariant($"from the survey: {along.Least:0.00} to {along.Most:0.00} along the platform, swept ")
            + Invariant($"with each vehicle where it arises; the edge keeps clear {clear}"), BudgetPlacing.Swept)],
    };

    private static string Leaning(double angle, Func<double, double> at, double coping, double tallest) =>
        Invariant($"{angle * 180 / Math.PI:0.##} degrees each way, swept with the vehicles by each part's height: {at(coping):0.00} at the ")
            + Invariant($"coping, {at(tallest):0.00} at {tallest:0.#} above rail top");

    private double Total(BudgetPlacing placing) => Lines.Where(l => l.Placing == placing).Sum(l => l.AmountMm);
}
