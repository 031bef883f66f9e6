using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Clearance.Requests;

/// <summary>What keeps two bodies of a set together.</summary>
public enum BodyJointKind
{
    /// <summary>Both rest on one bogie: its pivot is the trailing pivot of the body ahead and the leading pivot of the one behind.</summary>
    SharedBogie,

    /// <summary>Each has bogies or axles of its own, and their ends are coupled.</summary>
    Coupling,

    /// <summary>One of them has no wheels and hangs on a hinge at the other, midway in the gap.</summary>
    Hinge,
}

/// <summary>How a body is joined to the one ahead of it.</summary>
/// <param name="Kind">What keeps them together.</param>
/// <param name="Gap">Between the ends of the two bodies on straight track, mm.</param>
public sealed record BodyJoint(BodyJointKind Kind, double Gap);

/// <summary>
/// Bodies that always run together: an articulated set, or a unit of coupled cars. Every body is a vehicle of its own in the
/// sweep: where it stands is told by the axles under it alone, so what a set sweeps is exactly what its bodies sweep.
/// </summary>
/// <param name="Name">Name in the project file.</param>
/// <param name="Bodies">From the leading end to the trailing; at least two. The first part of each is its box.</param>
/// <param name="Joints">Between each body and the next.</param>
public sealed record VehicleSet(string Name, IReadOnlyList<Vehicle> Bodies, IReadOnlyList<BodyJoint> Joints)
{
    /// <summary>Whether the whole set also runs the other way round.</summary>
    public bool EitherWayRound => Bodies[0].EitherWayRound;

    /// <summary>Key of the set in the project file, for findings.</summary>
    public string Key { get; init; } = "vehicle";

    /// <summary>How far the front of a body's box lies ahead of midway between its pivots, and its rear (negative behind), mm.</summary>
    internal static (double Front, double Rear) Ends(Vehicle body) => (body.Parts[0].Outline.Max(p => p.X), body.Parts[0].Outline.Min(p => p.X));
}
