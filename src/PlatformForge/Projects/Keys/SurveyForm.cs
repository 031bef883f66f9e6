using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>One file of a survey as the project names it.</summary>
internal sealed record SurveySourceForm
{
    public string File { get; init; } = "";

    public MeasuredPart Measured { get; init; } = MeasuredPart.Centre;

    public Rail Rail { get; init; } = Rail.Left;

    public double RailWidth { get; init; }

    public string? Unit { get; init; }

    /// <summary>The file with its text, at a gauge in mm.</summary>
    /// <param name="text">Its text.</param>
    /// <param name="gauge">Distance between the running edges.</param>
    /// <param name="unitKnown">Whether figures without a unit are millimetres; otherwise the file has to say.</param>
    public SurveySource ToSource(string text, double gauge, bool unitKnown) =>
        new(File, text, new(Measured, Rail, gauge, RailWidth), Unit is { } unit ? LengthUnits.Named(unit) : unitKnown ? LengthUnit.Millimetre
            : null)
        { UnitStated = Unit is not null };
}

/// <summary>How a track was measured, as the project states it; mm of the model.</summary>
internal sealed record SurveyForm
{
    public string Kind { get; init; } = "";

    public SurveySourceForm First { get; init; } = new();

    public IReadOnlyList<SurveySourceForm> Also { get; init; } = [];

    public double RulerError { get; init; } = 0.5;

    public Hand Side { get; init; } = Hand.Left;

    public double? Chord { get; init; }

    public double? Spacing { get; init; }

    public ClosingChord? Closing { get; init; }

    public string? Element { get; init; }

    public Calibration? Calibration { get; init; }

    public bool Reverse { get; init; }

    public LaidAs Laid { get; init; } = LaidAs.Unknown;

    public double? LeastRadius { get; init; }

    public double? LeastEase { get; init; }

    public IReadOnlyList<double> Radii { get; init; } = [];

    public IReadOnlyList<double> Joints { get; init; } = [];

    /// <summary>Degrees.</summary>
    public double? GreatestKink { get; init; }

    public IEnumerable<SurveySourceForm> Files => Also.Prepend(First);

    /// <summary>What the Track room surveys.</summary>
    public SurveySpec ToSpec(TrackEntry track, IReadOnlyList<string> texts, double gauge, ModelScale scale)
    {
        var usual = Laying.Usual(scale.Ratio, Laid);
        return Spec(track, texts, gauge)
            with
        {
            Laying = usual with
            {
                LeastRadius = LeastRadius ?? usual.LeastRadius,
                LeastEase = LeastEase ?? usual.LeastEase,
                InScale = (usual.LeastRadius, usual.LeastEase),
                Radii = Radii,
                Joints = [.. Joints.Order()],
                GreatestKink = GreatestKink is { } kink ? kink * Math.PI / 180 : usual.GreatestKink
            }
        };
    }

    private SurveySpec Spec(TrackEntry track, IReadOnlyList<string> texts, double gauge)
    {
        bool drawn = Kind == "drawing";
        string key = track.Key + ".survey";
        SurveySource[] sources = [.. Files.Select((f, i) => f.ToSource(texts[i], gauge, !drawn))];
        return Kind switch
        {
            "string" => new OffsetsSpec(track.Name, key, sources, RulerError, track.Start, track.Heading, Side),
            "points" => new PointsSpec(track.Name, key, sources, RulerError),
            "versines" => new VersinesSpec(track.Name, key, sources, RulerError, Chord ?? double.NaN, track.Start, track.Heading, Spacing, Side, Closing),
            _ => new DrawingSpec(
                track.Name, key, sources, RulerError, First.File.EndsWith(
                    ".dxf",
                    StringComparison.OrdinalIgnoreCase) ? DrawingFormat.Dxf : DrawingFormat.Svg, Element, sources[0].Unit, Calibration, Reverse),
        };
    }
}
