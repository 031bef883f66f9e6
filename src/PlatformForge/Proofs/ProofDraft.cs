using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forecasts;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;

namespace PlatformForge.Proofs;

/// <summary>A proof by its blocks, before it is raised.</summary>
internal sealed record ProofDraft(string Group, string Platform, string Name, ProofKind Kind, IReadOnlyList<ColumnBlock> Blocks)
{
    public IReadOnlyList<ProofFigure> Figures { get; init; } = [];

    public RigidTransform? ToLayout { get; init; }

    public (string Track, double Chainage)? Rides { get; init; }

    public string Use { get; init; } = "";

    /// <summary>What tells it from all others.</summary>
    public string Mark { get; init; } = "";

    /// <summary>What is cut into it.</summary>
    public IReadOnlyList<string> Engraved { get; init; } = [];

    /// <summary>Plane that is to lie on the bed, and the long axis; null where it stands as its blocks do.</summary>
    public (HeightPlane Surface, Point2 Along)? Lying { get; init; }

    /// <summary>Raises it and lays it on the bed.</summary>
    /// <param name="printer">The printer, in millimetres as they come out.</param>
    /// <param name="cancel">Stops between two steps.</param>
    public Proof Raised(PrinterSpec printer, CancellationToken cancel)
    {
        var solid = SolidRaiser.Raise(Blocks);
        cancel.ThrowIfCancellationRequested();
        var turn = Lying is { } lies ? PrintTurn.Lying(lies.Surface, lies.Along) : RigidTransform.Identity;
        var hull = ConvexRing.Hull(solid.Mesh.Moved(turn).Vertices.Select(v => new Point2(v.X, v.Y)));
        turn = Kind == ProofKind.Strip ? turn : turn.Then(RigidTransform.AboutZ(new BedShape(printer).Best(hull).Turn)); // the strip is of the bed's own axes
        var (low, high) = solid.Mesh.Moved(turn).Box();
        turn = turn.Then(RigidTransform.Shift(-low.X, -low.Y, -low.Z));
        var lying = solid.Mesh.Moved(turn);
        return new(Group, Platform, Name, Kind, solid, turn.Inverse(), Figures)
        {
            ToLayout = ToLayout,
            Rides = Rides,
            Use = Use,
            Mark = Mark,
            Engraved = Engraved,
            Hull = ConvexRing.Hull(lying.Vertices.Select(v => new Point2(v.X, v.Y))),
            Size = high - low,
            Overhangs = OverhangMeter.Measure(lying, printer.Layer, printer.Nozzle, printer.LongestBridge),
            Estimate = PrintForecast.Of(lying, solid.ColumnVolume, printer),
        };
    }
}
