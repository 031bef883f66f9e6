using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// What a finished folder was designed for, from the project and not from the shapes made of it, so that the folder can be
/// verified alone. All in mm of the model, heights as their own comments say.
/// </summary>
/// <param name="Project">Name of the layout.</param>
/// <param name="Ratio">Full-size length over model length.</param>
/// <param name="Gauge">Distance between running edges.</param>
/// <param name="RailTop">Height of the rails over the baseboard.</param>
/// <param name="Tracks">Tracks as ridden, with their vehicles.</param>
/// <param name="Printer">What the sections are printed on.</param>
/// <param name="Platforms">The platforms.</param>
public sealed record DesignCopy(
    string Project, double Ratio, double Gauge, double RailTop,
    IReadOnlyList<DesignTrack> Tracks, PrinterSpec Printer, IReadOnlyList<DesignPlatform> Platforms)
{
    /// <summary>Name of the file in the output folder.</summary>
    public const string FileName = "design.json";

    public static DesignCopy Of(Dossier dossier) => new(
        dossier.Project, dossier.Scale.Ratio, dossier.Gauge, dossier.RailTop,
        [.. dossier.Tracks.Select(DesignTrack.Of)],
        dossier.Printer,
        [.. dossier.Platforms.Select(DesignPlatform.Of)]);
}

/// <summary>A track as ridden, element by element, kinks and all.</summary>
public sealed record DesignTrack(string Name, IReadOnlyList<DesignElement> Elements, IReadOnlyList<Vehicle> Vehicles, bool StartsAtBuffers, bool EndsAtBuffers)
{
    public static DesignTrack Of(TrackRun run) => new(
        run.Ride.Name, [.. run.Ride.Elements.Select(DesignElement.Of)], run.Vehicles, run.StartsAtBuffers, run.EndsAtBuffers)
    { RailTop = run.RailTop };

    /// <summary>Height of its rails over the baseboard where it is another than the layout's; null where it is that.</summary>
    public double? RailTop { get; init; }

    public Centreline ToCentreline() => new(Name, [.. Elements.Select(e => e.ToElement())]);

    public TrackRun ToRun() => new(ToCentreline(), Vehicles) { StartsAtBuffers = StartsAtBuffers, EndsAtBuffers = EndsAtBuffers, RailTop = RailTop };
}

/// <summary>An element of a track: start in mm, heading in radians, length in mm, curvatures in 1/mm.</summary>
public sealed record DesignElement(double X, double Y, double Heading, double Length, double StartCurvature, double EndCurvature)
{
    public static DesignElement Of(CentrelineElement e) => new(e.Start.X, e.Start.Y, e.Heading, e.Length, e.StartCurvature, e.EndCurvature);

    public CentrelineElement ToElement() => new(new(X, Y), Heading, Length, StartCurvature, EndCurvature);
}

/// <summary>A platform by what it is held to.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Chart">The smooth line that carries its chainages, element by element.</param>
/// <param name="Face">Track, side, chainages, style, vertical gap, whether bodies may pass over.</param>
/// <param name="Height">Height of its coping above rail top.</param>
/// <param name="Budget">What is kept from vehicles, and their play.</param>
public sealed record DesignPlatform(string Name, IReadOnlyList<DesignElement> Chart, FaceSpec Face, double Height, ClearanceBudget Budget)
{
    /// <summary>The same platform as its second face sees it, held to that face's own track and budget; null where it has a back.</summary>
    public DesignPlatform? OtherFace { get; init; }

    /// <summary>Whether its ends, or lines across it, are off the square, or a bank of its sections turns round an end.</summary>
    public bool IsSkew { get; init; }

    /// <summary>The walking surface, coping included, and all that is planned to stand over it in one piece with the sections; null where nothing is told of
    /// it.</summary>
    public DesignDeck? Deck { get; init; }

    /// <summary>Whether this is a second face, told by <see cref="OtherFace"/> of its platform.</summary>
    public bool IsFurther { get; private init; }

    /// <summary>The track that the other face of the platform is on; empty where there is none. What runs there is held by that face.</summary>
    public string OtherTrack { get; private init; } = "";

    /// <summary>The platform by each of its faces.</summary>
    public IEnumerable<DesignPlatform> Faces => OtherFace is { } other
        ? [this with { OtherTrack = other.Face.Track }, other with { IsFurther = true, OtherTrack = Face.Track }]
        : [this];

    public Centreline ToChart() => new(Face.Track, [.. Chart.Select(e => e.ToElement())]);

    internal static DesignPlatform Of(PlatformDossier platform) => new(
        platform.Name, [.. platform.Plan.Chart.Elements.Select(DesignElement.Of)], platform.Plan.Spec.Face, platform.Plan.Spec.Height, platform.Budget)
    {
        OtherFace = platform.FurtherFaces is [var other, ..] ? Of(other) : null,
        IsSkew = platform.Plan.Spec.Skew.IsAny || platform.Plan.Bank is { IsTurned: true },
        Deck = DesignDeck.Of(platform.Plan),
    };
}

/// <summary>A walking surface as planned: one plane from each break to the next, in the layout frame, mm.</summary>
/// <param name="Breaks">Chainages of the breaks, one more than planes.</param>
/// <param name="Planes">Height over the baseboard.</param>
/// <param name="Stands">What stands over it.</param>
public sealed record DesignDeck(IReadOnlyList<double> Breaks, IReadOnlyList<HeightPlane> Planes, IReadOnlyList<DesignStanding> Stands)
{
    /// <summary>Of a plan; null where it has no surface yet, as one that is still being put together.</summary>
    internal static DesignDeck? Of(PlatformPlan plan) => ReferenceEquals(plan.Surface, DeckSurface.None) ? null : new(
        plan.Surface.Breaks, plan.Surface.Planes,
        [.. plan.Features.SelectMany(f => f.Prisms.Select(p => new DesignStanding(f.Name, p.Ring, FeatureBlocks.Over(plan, p))))
            .Where(s => s.Rise > Tolerances.GridStep)]);
}

/// <summary>Something of a feature that stands over the walking surface in one piece with a section.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Ring">Its outline in the layout, convex, counter-clockwise, mm.</param>
/// <param name="Rise">How high it stands over the surface at most, mm.</param>
public sealed record DesignStanding(string Name, IReadOnlyList<Point2> Ring, double Rise);
