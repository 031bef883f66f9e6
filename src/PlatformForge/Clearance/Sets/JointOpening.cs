using PlatformForge.Clearance.Requests;

namespace PlatformForge.Clearance.Sets;

/// <summary>How wide the space between two bodies of a set is while the joint passes a platform, at the corners of their ends, mm.</summary>
/// <param name="Set">Name of the set.</param>
/// <param name="Ahead">Name of the body ahead.</param>
/// <param name="Behind">Name of the body behind.</param>
/// <param name="Joint">How they are joined, with the gap on straight track.</param>
/// <param name="Platform">On the platform's side.</param>
/// <param name="Away">On the other side.</param>
public sealed record JointOpening(string Set, string Ahead, string Behind, BodyJoint Joint, OpeningRange Platform, OpeningRange Away)
{
    /// <summary>The least opening of both sides; below nil the ends run into one another.</summary>
    public OpeningRange Least => Platform.Least <= Away.Least ? Platform : Away;
}

/// <summary>Least and greatest opening with the chainages at which they are met, mm.</summary>
public sealed record OpeningRange(double Least, double LeastAt, double Greatest, double GreatestAt)
{
    /// <summary>Nothing met yet.</summary>
    internal static OpeningRange None { get; } = new(double.PositiveInfinity, double.NaN, double.NegativeInfinity, double.NaN);

    internal OpeningRange With(double opening, double chainage) => new(
        Math.Min(Least, opening), opening < Least ? chainage : LeastAt, Math.Max(Greatest, opening), opening > Greatest ? chainage : GreatestAt);
}
