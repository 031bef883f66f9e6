using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>How near a plan's planes come to what is asked of its level part, mm.</summary>
/// <param name="CopingLow">Lowest place of the coping's front edge against its height; negative below it.</param>
/// <param name="CopingHigh">Highest place.</param>
/// <param name="CopingAt">Chainage of the place farthest off.</param>
/// <param name="Falls">Every line at which planes meet or the level part ends, with the fall found there from front edge to back.</param>
/// <param name="FallAsked">The fall asked, front edge to back.</param>
public sealed record DeckFit(double CopingLow, double CopingHigh, double CopingAt, IReadOnlyList<(double Chainage, double Fall)> Falls, double FallAsked)
{
    /// <summary>The most by which the coping's front edge is off its height.</summary>
    public double CopingOff => Math.Max(CopingHigh, -CopingLow);

    /// <summary>The most by which a fall is off the fall asked.</summary>
    public double FallOff => Falls.Select(f => Math.Abs(f.Fall - FallAsked)).DefaultIfEmpty(0).Max();

    /// <summary>Whether coping and falls keep within what is allowed.</summary>
    public bool Keeps => CopingOff <= HingedDeck.CopingAllowance && FallOff <= HingedDeck.FallAllowance;

    public static DeckFit Of(PlatformPlan plan)
    {
        var (profile, surface, width) = (plan.Profile, plan.Surface, plan.Spec.Deck.Width);
        var coping = plan.Stations.Where(s => s >= profile.StartHead && s <= profile.EndHead)
            .Select(s => (At: s, Off: plan.TopAt(s, plan.CopingFront.At(s)) - profile.Level)).ToArray();
        var falls = surface.Breaks.Where(s => s >= profile.StartHead && s <= profile.EndHead).Select(s => (s, Fall(
            HingeLine.At(plan, s),
            surface.At(s)))).ToArray();
        return new(
            coping.Min(c => c.Off),
            coping.Max(c => c.Off),
            coping.MaxBy(c => Math.Abs(c.Off)).At,
            falls,
            plan.Spec.Deck.Crossfall > 0 ? width / plan.Spec.Deck.Crossfall : 0);

        double Fall(HingeLine line, HeightPlane plane) => plane.At(line.Front) - plane.At(line.Front + (line.Away * line.Length));
    }
}
