using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Verification.Written;

/// <summary>What was found out about a finished platform from what was written.</summary>
/// <param name="Closest">The least distance of anything to any vehicle standing true on the track; null when nothing comes
/// into the height band of any vehicle.</param>
/// <param name="Tightest">The least of what is left after play and the budget's constant entries; below nil the budget is broken.</param>
/// <param name="Vehicles">The same for each vehicle on each track, in the order of the facts.</param>
/// <param name="Sections">Figures of each section, in the order given.</param>
/// <param name="Findings">Everything that is wrong, codes PF8xxx.</param>
public sealed record Verdict(
    Nearness? Closest,
    Nearness? Tightest,
    IReadOnlyList<VehicleVerdict> Vehicles,
    IReadOnlyList<SectionVerdict> Sections,
    IReadOnlyList<Finding> Findings)
{
    /// <summary>How many platforms were held against the vehicles.</summary>
    public int Platforms { get; init; } = 1;

    /// <summary>What was held against no vehicle, and why, each in words; empty when every printed section was held against every vehicle.</summary>
    public IReadOnlyList<string> NotHeld { get; init; } = [];

    /// <summary>Whether nothing touches and nothing was left out: only then is a platform clear.</summary>
    public bool IsClear => Passed && NotHeld.Count == 0;

    /// <summary>Whether nothing is wrong; warnings do not count.</summary>
    public bool Passed => !Findings.Any(f => f.Severity == Severity.Error);
}

/// <summary>Where something comes nearest to a vehicle.</summary>
/// <param name="Clearance">Distance in plan, mm; below nil it is the depth of the overlap.</param>
/// <param name="Vehicle">Name of the vehicle.</param>
/// <param name="Part">Name of its part.</param>
/// <param name="Track">Name of the track it stands on.</param>
/// <param name="Section">Name of the section that is nearest.</param>
/// <param name="Chainage">Chainage of the nearest point, mm.</param>
/// <param name="Offset">Its offset from the track's middle, mm, left positive.</param>
/// <param name="Height">Its height above rail top, mm.</param>
/// <param name="Point">The point in the layout frame, mm.</param>
/// <param name="Backwards">Whether the vehicle stands the other way round.</param>
public sealed record Nearness(
    double Clearance,
    string Vehicle,
    string Part,
    string Track,
    string Section,
    double Chainage,
    double Offset,
    double Height,
    Point3 Point,
    bool Backwards)
{
    /// <summary>The nearer of two; the first where they are alike.</summary>
    internal static Nearness? Less(Nearness? a, Nearness? b) => b is null || a?.Clearance <= b.Clearance ? a : b;

    /// <summary>Name of the platform that the section belongs to.</summary>
    public string Platform { get; init; } = "";

    /// <summary>Whether it is the nearest in plan alone: nothing of the platform stands there at the part's own heights, it is held out from under (or over)
    /// the
    /// part.</summary>
    public bool InPlan { get; init; }

    /// <summary>Height of the part's underside above rail top, mm.</summary>
    public double Underside { get; init; }

    /// <summary>Chainage of the vehicle's foremost axle when it comes nearest, mm.</summary>
    internal double Front { get; init; }

    /// <summary>
    /// The stretch of places as near as this one, chainages in mm: on a constant curve a vehicle comes as near everywhere, and the one place that is least by
    /// a hair tells nothing. Both the chainage of the nearest point where there is no such stretch.
    /// </summary>
    public (double From, double To) Stretch { get; init; }
}

/// <summary>The least clearance of one vehicle on one track; see <see cref="Verdict"/> for the two measures.</summary>
public sealed record VehicleVerdict(string Vehicle, string Track, Nearness? Closest, Nearness? Tightest)
{
    /// <summary>Key of the vehicle in the file that states it, for findings; empty where that is not known.</summary>
    public string Key { get; init; } = "";

    /// <summary>Name of the platform it was held against; empty when it was held against all of a folder's.</summary>
    public string Platform { get; init; } = "";

    /// <summary>One a vehicle and track of many verdicts, the least of each.</summary>
    internal static IReadOnlyList<VehicleVerdict> Joined(IEnumerable<VehicleVerdict> verdicts)
    {
        var vehicles = new List<VehicleVerdict>();
        foreach (var verdict in verdicts)
        {
            int at = vehicles.FindIndex(v => v.Vehicle == verdict.Vehicle && v.Track == verdict.Track);
            if (at < 0)
            {
                vehicles.Add(verdict);
            }
            else
            {
                vehicles[at] = vehicles[at] with
                {
                    Closest = Nearness.Less(vehicles[at].Closest, verdict.Closest),
                    Tightest = Nearness.Less(vehicles[at].Tightest, verdict.Tightest)
                };
            }
        }

        return vehicles;
    }
}

/// <summary>Figures of one section as read back.</summary>
/// <param name="Section">Its name.</param>
/// <param name="File">Its file.</param>
/// <param name="Triangles">Count of triangles.</param>
/// <param name="Volume">Enclosed volume, mm³.</param>
/// <param name="Size">Extent along the axes of the print, mm.</param>
/// <param name="Sound">Whether the mesh is closed, oriented and free of degenerate triangles.</param>
/// <param name="ThinnestWall">Least thickness in mm found of upright walls; null when none was measured.</param>
public sealed record SectionVerdict(string Section, string File, int Triangles, double Volume, Point3 Size, bool Sound, double? ThinnestWall)
{
    /// <summary>Where that is, in the coordinates of its file, mm.</summary>
    public Point3? ThinnestAt { get; init; }
}
