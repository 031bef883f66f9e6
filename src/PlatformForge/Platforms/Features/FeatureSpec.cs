using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

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

    /// <summary>Whether it stands along a platform's back, which an island does not have.</summary>
    internal virtual bool NeedsBack => false;

    /// <summary>How far from the platform's back its holes along it reach, mm; 0 where it has none there.</summary>
    internal virtual double BackReach => 0;

    /// <summary>The same with what of its place is not stated chosen before a rebate along the back that reaches so far from it, mm.</summary>
    internal virtual FeatureSpec Before(double rebate) => this;

    /// <summary>Track of the face whose chainage and edge place it; null is the platform's first.</summary>
    public string? Face { get; init; }

    /// <summary>The same for a nozzle so wide, mm: what of it is not stated yields to it.</summary>
    internal virtual FeatureSpec Printed(double nozzle) => this;

    /// <summary>The same placed on the spine between two faces.</summary>
    /// <param name="byFirst">Whether the first face places it.</param>
    /// <param name="onSpine">From a chainage, an inset and what that is from, on its own face, to chainage and inset from the first face's edge.</param>
    internal virtual FeatureSpec Carried(bool byFirst, Func<double, double, InsetFrom, (double Chainage, double Inset)> onSpine) => this;

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
