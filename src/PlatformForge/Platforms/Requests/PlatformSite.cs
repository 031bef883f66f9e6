using PlatformForge.Units;

namespace PlatformForge.Platforms.Requests;

/// <summary>What a platform needs to know of the layout it stands on.</summary>
/// <param name="Scale">Ratio of full size to model.</param>
/// <param name="RailTop">Height of the rails' running surface over the baseboard, mm.</param>
public sealed record PlatformSite(ModelScale Scale, double RailTop)
{
    /// <summary>Heights that rails may have over the baseboard, mm.</summary>
    public static NumberRange RailTops => NumberRange.From(0, 200);
}
