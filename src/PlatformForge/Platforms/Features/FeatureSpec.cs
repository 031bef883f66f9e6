using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>Tells of a figure that is out of its range.</summary>
/// <param name="key">Key of the figure under its feature's.</param>
/// <param name="what">What it is, in words.</param>
/// <param name="value">The figure.</param>
/// <param name="least">Least that is taken.</param>
/// <param name="most">Greatest that is taken.</param>
internal delegate void FigureRange(string key, string what, double value, double least, double most);

/// <summary>
/// Something that stands on a platform or is let into it, as asked for. It plans itself into one neutral result; that is all that the rooms after this one
/// ever see of it.
/// </summary>
public abstract record FeatureSpec
{
    /// <summary>The word under which it stands in a platform: of a list where there may be several.</summary>
    public abstract string Word { get; }

    /// <summary>Whether a platform has one at most.</summary>
    public virtual bool IsSingle => false;

    /// <summary>Tells its figures with their ranges.</summary>
    internal abstract void Figures(FigureRange range);

    /// <summary>The least width of a deck that it finds room on, mm, and what takes it, for the message; null where it asks for none.</summary>
    internal virtual (double Width, string What)? LeastDeck(PlatformSpec spec) => null;

    /// <summary>What can be told of it from what is asked alone, before anything is swept.</summary>
    /// <param name="spec">The platform.</param>
    /// <param name="site">What it stands on.</param>
    /// <param name="key">Its key.</param>
    internal virtual IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) => [];

    /// <summary>Plans it: with what it is among, but without ribs, which keep off it.</summary>
    internal abstract PlannedFeature Plan(FeatureSite site);

    /// <summary>The same once its ribs stand between the cuts that were chosen; what may differ is what follows from them.</summary>
    internal virtual PlannedFeature AmongRibs(PlannedFeature planned, FeatureSite site, IReadOnlyList<PlanRib> ribs, IReadOnlyList<double> cuts) => planned;
}
