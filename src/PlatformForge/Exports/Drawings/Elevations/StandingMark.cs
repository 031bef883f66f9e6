using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>The foot of something on a deck.</summary>
/// <param name="Chainage">Chainage, mm.</param>
/// <param name="Place">Its place in the layout.</param>
/// <param name="Section">Number of the section that it stands on.</param>
/// <param name="Deck">Height of the deck there over the baseboard, mm.</param>
internal sealed record StandingFoot(double Chainage, Point2 Place, int Section, double Deck);

/// <summary>A corner of a shape as somebody before a face sees it.</summary>
/// <param name="Foot">The foot that it is placed by.</param>
/// <param name="Right">How far to the right of that, mm.</param>
/// <param name="Height">Its height over the baseboard, mm.</param>
internal readonly record struct StandingCorner(StandingFoot Foot, double Right, double Height);

/// <summary>A plain shape of what stands on a deck, seen from before a face.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Colour">Its colour in pictures.</param>
/// <param name="Corners">Its corners: what is seen is their hull.</param>
/// <param name="Away">How far behind the first edge it stands, mm.</param>
internal sealed record StandingMark(string Name, Rgb Colour, IReadOnlyList<StandingCorner> Corners, double Away)
{
    /// <summary>Height over the baseboard at which it is broken off, mm.</summary>
    public double BrokenAt { get; init; } = double.PositiveInfinity;

    /// <summary>It broken off so far over the deck, mm.</summary>
    public StandingMark Broken(double over) => this with { BrokenAt = Corners[0].Foot.Deck + over };
}
