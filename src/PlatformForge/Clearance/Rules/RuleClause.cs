using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance.Rules;

/// <summary>One published figure and how a platform is held to it.</summary>
/// <param name="Code">Finding code.</param>
/// <param name="Clause">What the figure is called where it is published.</param>
/// <param name="Source">Where it is published, or "from memory".</param>
/// <param name="Check">What is amiss, if anything.</param>
internal sealed record RuleClause(string Code, string Clause, string Source, Func<RuleSubject, Shortfall?> Check)
{
    public Finding? Hold(RuleSubject subject) => Check(subject) is { } amiss
        ? Finding.Warning(Code, amiss.Key.Length == 0 ? subject.Key : $"{subject.Key}.{amiss.Key}", Invariant($"{amiss.What} ({Clause}; {Source})."),
            amiss.Remedy)
        : null;
}

/// <summary>How a platform misses a figure.</summary>
/// <param name="Key">Key of the platform table at fault; empty for the platform as a whole.</param>
/// <param name="What">What is wrong, with both figures.</param>
/// <param name="Remedy">What would do.</param>
internal sealed record Shortfall(string Key, string What, string Remedy);
