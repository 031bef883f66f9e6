using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>A centreline found from a survey, with all that is known of how good it is.</summary>
/// <param name="Line">The centreline; chainage 0 is square to the first reading.</param>
/// <param name="Alignment">What it is made of, where the readings support straights, curves and transitions; null where it could
/// only be drawn as a smooth curve.</param>
/// <param name="Elements">Its elements and the joints between them.</param>
/// <param name="Residuals">Every reading and by how much it misses, in the order of the files.</param>
/// <param name="LeastRadius">The sharpest place; null on straight track.</param>
/// <param name="Movement">How far the line may lie from the true one.</param>
/// <param name="RulerError">The stated reading error, mm.</param>
/// <param name="Scatter">Standard deviation of the readings about the line, mm, after the figures it was fitted by.</param>
/// <param name="Versines">The readings where the track was measured by versines; empty otherwise.</param>
public sealed record SurveyedTrack(
    Centreline Line,
    AlignmentSpec? Alignment,
    IReadOnlyList<FittedElement> Elements,
    IReadOnlyList<ReadingResidual> Residuals,
    LeastRadius? LeastRadius,
    SurveyMovement Movement,
    double RulerError,
    double Scatter,
    IReadOnlyList<VersineReading> Versines)
{
    /// <summary>What it means for vehicles beside platforms, most doubtful first; empty where nobody has said which those are.</summary>
    public IReadOnlyList<ReachDoubt> Doubts { get; init; } = [];

    /// <summary>What an alignment copied from this line has to state as its own doubt, mm: how far the true line may lie off beside
    /// the platforms, or anywhere where nobody has said where those are.</summary>
    public double StatedDoubt => Doubts.Select(d => d.Line).DefaultIfEmpty(Movement.Likely.Max()).Max();

    /// <summary>The readings it was found from; null where it was made up otherwise.</summary>
    internal Survey? Read { get; init; }

    /// <summary>How the track was laid.</summary>
    public Laying Laying { get; init; } = Laying.UsualInFourMillimetres;

    /// <summary>All lines that meet the readings kept and are laid as flexible track is; null where readings fix no places, or where
    /// the user says that the track was not so laid.</summary>
    public AdmissibleLines? Flexible => FlexibleSet?.Value;

    /// <summary>The same, found when somebody asks.</summary>
    internal Lazy<AdmissibleLines?>? FlexibleSet { get; init; }

    /// <summary>Kinks that speak against flexible track: those that no likely line does without.</summary>
    public IEnumerable<Kink> ClearKinks => Line.Kinks.Where(k => !DoubtfulKinks.Contains(k) && !KinksInDoubt.Any(d => d.Kink == k));

    /// <summary>Kinks that the line has for the sake of one reading in doubt, which it would not have without that.</summary>
    internal IReadOnlyList<(Kink Kink, Reading Reading)> KinksInDoubt { get; init; } = [];

    /// <summary>All lines of what is usual in the scale, where it allows for more than was stated and no line so stated meets the readings; otherwise
    /// null.</summary>
    internal Lazy<AdmissibleLines?>? UsualSet { get; init; }

    /// <summary>The flexible lines that the bound has to allow for: those as stated, or as usual where the readings contradict what was stated.</summary>
    public AdmissibleLines? AllowedFlexible => Flexible is { IsEmpty: true } ? UsualSet?.Value is { IsEmpty: false } usual ? usual : null : Flexible;

    /// <summary>Whether the stated radii go with no line of the stated joints, and are left out of the bound.</summary>
    public bool RadiiLeftOut { get; init; }

    /// <summary>Whether the readings contradict that the track was laid as flexible track is.</summary>
    public bool ContradictsFlexible => Flexible is { IsEmpty: true } || ClearKinks.Any();

    /// <summary>A line that the readings do not speak against and that lies outside of what flexible track allows; null where none is
    /// met, or the track was not said to be flexible.</summary>
    public OutsideLine? Outside { get; init; }

    /// <summary>Whether the bound on the line is that of flexible track.</summary>
    public bool IsBoundAsFlexible => Laying.As == LaidAs.Flexible && Flexible is not null && !ContradictsFlexible;

    /// <summary>All lines of pieces between the joints that the user states; null where none are stated, or the track is not said to be
    /// sectional.</summary>
    internal JointedLines? Sectional => SectionalSet?.Value;

    /// <summary>The same, found when somebody asks.</summary>
    internal Lazy<JointedLines?>? SectionalSet { get; init; }

    /// <summary>A stated joint that the readings want elsewhere; null where none is stated, or none so clearly.</summary>
    public MovedJoint? Misplaced { get; init; }

    /// <summary>What by itself would let the readings go with pieces as stated, where they do not, likeliest first; each was tried.</summary>
    internal IReadOnlyList<SectionalCause> Causes => CausesFound?.Value ?? [];

    /// <summary>The same, found when somebody asks.</summary>
    internal Lazy<IReadOnlyList<SectionalCause>>? CausesFound { get; init; }

    /// <summary>What by itself would let the readings go with flexible track, where no line so laid meets them; null where one does.</summary>
    internal FlexibleCauses? CausesOfFlexible => CausesOfFlexibleFound?.Value;

    /// <summary>The same, found when somebody asks.</summary>
    internal Lazy<FlexibleCauses?>? CausesOfFlexibleFound { get; init; }

    /// <summary>What the ruler error has to be at least, mm, where the readings would go with a far simpler line if it was stated larger; null for
    /// none.</summary>
    public ErrorTooSmall? ErrorTooSmall { get; init; }

    /// <summary>Stated joints that may lie elsewhere: the readings cannot tell, and the bound allows for either.</summary>
    internal IReadOnlyList<MovedJoints> PerhapsMoved => PerhapsMovedSet?.Value ?? [];

    /// <summary>The same, found when somebody asks.</summary>
    internal Lazy<IReadOnlyList<MovedJoints>>? PerhapsMovedSet { get; init; }

    /// <summary>Stated joints that may as well lie elsewhere: the readings cannot tell, and the bound allows for either. Empty where the bound is
    /// another.</summary>
    public IReadOnlyList<MovedJoint> JointsInDoubt => IsBoundAsSectional ? [.. PerhapsMoved.Select(m => m.Joint)] : [];

    /// <summary>Whether the bound on the line is that of pieces between stated joints.</summary>
    public bool IsBoundAsSectional => Laying.As == LaidAs.Sectional && Misplaced is null && Sectional is { AtOdds.Length: 0, Strange.Count: 0 };

    /// <summary>Of which lines the bound beside a platform holds, in words that follow "the edge keeps clear".</summary>
    public string Admitted => (IsBoundAsFlexible, IsBoundAsSectional) switch
    {
        (true, _) => "on any flexible line that " + Meeting,
        (_, true) => "on any line of the stated pieces that " + Meeting,
        _ => (AllowedFlexible is not null ? "on any flexible line that " + Meeting + ", and of other track " : "") + "in 19 of 20 surveys",
    };

    // Readings left out bind no line.
    private string Meeting => Outliers.Any() || Doubted.Count > 0 ? "meets the other readings" : "meets the readings";

    /// <summary>What the survey leaves uncertain of the line beside a platform: over all admissible lines where the track was laid
    /// flexible, or of pieces with stated joints, and the readings agree;
    /// otherwise by the bound that holds in 98 of 100 surveys, widened to all flexible lines where it may be flexible too.</summary>
    /// <param name="from">Chainage at which the first vehicle beside the platform may stand, mm.</param>
    /// <param name="to">The same of the last.</param>
    public LineDoubt DoubtBeside(double from, double to)
    {
        if (IsBoundAsFlexible)
        {
            return new AdmissibleDoubt(Flexible!, Line);
        }

        if (IsBoundAsSectional)
        {
            return PerhapsMoved.Aggregate((LineDoubt)new JointedDoubt(Sectional!, Line), (all, m) => LineDoubt.Either(all, new JointedDoubt(m.Lines, Line)));
        }

        double shape = Movement.Loose is null ? 0 : Movement.Most(from, to);
        var band = new BandDoubt(Movement.Loose is null ? Movement.At : _ => shape);
        return AllowedFlexible is not { } flexible ? band : LineDoubt.Either(band, new AdmissibleDoubt(flexible, Line));
    }

    /// <summary>What it would be if the track was said to be sectional, with no joints stated; null where how it was laid is said already, and for versines,
    /// which are told the same either way.</summary>
    public LineDoubt? DoubtIfSectional => Laying.As == LaidAs.Unknown && Movement.Loose is null ? new BandDoubt(Movement.At) : null;

    /// <summary>What it would be if the track was laid flexible; null where that is said already, or cannot be.</summary>
    public LineDoubt? DoubtIfFlexible => Laying.As == LaidAs.Unknown && Flexible is not null && !ContradictsFlexible ? new AdmissibleDoubt(Flexible, Line)
        : null;

    /// <summary>Chord in mm that versines were read over; null for other surveys.</summary>
    public double? Chord { get; init; }

    /// <summary>Kinks that a likely line without a kink there would do without.</summary>
    public IReadOnlyList<Kink> DoubtfulKinks { get; init; } = [];

    /// <summary>The closing chord, where its length or its versine is named as misread and left out; otherwise null.</summary>
    public ClosingMisread? Closing { get; init; }

    /// <summary>Readings that are named as misread and left out.</summary>
    public IEnumerable<ReadingResidual> Outliers => Residuals.Where(r => r.IsOutlier);

    /// <summary>Readings that the line meets and that may be misread all the same, since it bends for them alone and readings so far
    /// apart cannot tell a bend from a misreading. Each is held against the line that would be found without it.</summary>
    public IReadOnlyList<ReadingResidual> Doubted { get; init; } = [];

    /// <summary>Whether a reading is one of those in doubt.</summary>
    public bool IsInDoubt(Reading reading) => Doubted.Any(d => d.Reading == reading);
}

/// <summary>A closing chord that the versines contradict.</summary>
/// <param name="OfLength">Whether its length is meant; otherwise its versine.</param>
/// <param name="Read">What was read, mm, signed as in the file.</param>
/// <param name="Fitting">What would fit, mm, signed so too.</param>
public sealed record ClosingMisread(bool OfLength, double Read, double Fitting);

/// <summary>What an element of a fitted line is.</summary>
public enum FittedKind
{
    Straight,
    Curve,
    Transition,
}

/// <summary>One element of a fitted line.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="From">Chainage of its first joint, mm.</param>
/// <param name="To">Chainage of its last joint, mm.</param>
/// <param name="StartCurvature">Curvature at its start, 1/mm, left positive.</param>
/// <param name="EndCurvature">Curvature at its end, 1/mm.</param>
public sealed record FittedElement(FittedKind Kind, double From, double To, double StartCurvature, double EndCurvature);

/// <summary>The sharpest place of a line.</summary>
/// <param name="Radius">Radius, mm.</param>
/// <param name="Chainage">Where, mm; the middle of a curve.</param>
/// <param name="Hand">Which way it turns.</param>
public sealed record LeastRadius(double Radius, double Chainage, Hand Hand);
