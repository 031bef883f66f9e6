using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Catalogue;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Units;

namespace PlatformForge.Projects.Remedies;

/// <summary>What is said of a remedy once it was tried.</summary>
internal static class RemedyWords
{
    /// <summary>A cure works: the room's own sentence where it is the room's own cure, one about the cure otherwise.</summary>
    public static Finding Tried(Finding finding, Cure cure)
    {
        bool own = finding.Cure is { } offered && offered == cure with { Tried = offered.Tried };
        bool keeps = own || finding.Cure is null;
        string works = $"Tried: {Change(cure)} works.";
        return finding with
        {
            Cure = cure,
            Remedy = (keeps || IsRounded(finding.Cure!, cure)) && Says(finding.Remedy, cure) ? finding.Remedy
                : keeps ? $"{Ended(finding.Remedy)}{works}" : works + Takes(finding),
        };
    }

    /// <summary>A cure mends the finding and lets another be seen that it does not cause by itself.</summary>
    public static Finding Next(Finding finding, Cure cure, (string Code, string Key) next) => finding with
    {
        Cure = cure,
        Remedy = $"Tried: with {Change(cure)} it goes, and {next.Code} comes next{(next.Key.Length == 0 ? "" : $", at {next.Key}")}.{Takes(finding)}",
    };

    /// <summary>Nothing that was tried works.</summary>
    public static Finding None(Finding finding) => finding with
    {
        Cure = null,
        Remedy = finding.Cure is null ? finding.Remedy : $"No single value that was tried mends this.{(Takes(finding) is { Length: > 0 } range ? range
            : " " + FindingCatalogue.Find(finding.Code)!.Cure)}",
    };

    /// <summary>There was no time to try.</summary>
    public static Finding Untried(Finding finding) => finding.Cure is null ? finding : finding with
    {
        Remedy = finding.Remedy + " (Not tried: it would take too long.)",
    };

    /// <summary>What mends another finding has mended this one too.</summary>
    public static Finding MendedBy(Finding finding, Cure cure) =>
        finding.Cure == cure with { Tried = false } ? Tried(finding, cure) : finding with { Cure = cure, Remedy = $"Tried: {Change(cure)} mends this too." };

    // What a key takes at all, or which keys there are, where the room's own sentence, which told it, gave way.
    private static string Takes(Finding finding) =>
        finding.Code == "PF1008" && KeyModel.RuleOf(finding.Key) is NumberRule rule ? $" The key takes {rule.Wanted}."
        : finding.Code == "PF1006" && finding.Remedy.StartsWith("Known here: ", StringComparison.Ordinal) ? " " + finding.Remedy
        : "";

    // A cure is what was offered, with fewer digits.
    private static bool IsRounded(Cure offered, Cure cure) => offered.Key == cure.Key && offered.Act == cure.Act
        && double.TryParse(offered.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double asked)
        && double.TryParse(cure.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double given)
        && Math.Abs(asked - given) <= Tolerances.GridStep;

    // A sentence, ended, for another to follow.
    private static string Ended(string sentence) => sentence.Length == 0 ? "" : sentence[^1] is '.' or '?' or '!' ? sentence + " " : sentence + ". ";

    private static string Change(Cure cure) => cure.Act switch
    {
        CureAct.LeaveOut => $"leaving {cure.Key} out",
        CureAct.Rename => $"calling {cure.Key} by the name {cure.Value}",
        _ => $"{cure.Key} = {cure.Value}",
    };

    // The sentence names the value already.
    private static bool Says(string remedy, Cure cure) => cure.Act switch
    {
        CureAct.LeaveOut => remedy.Contains("eave ", StringComparison.Ordinal) && remedy.Contains(" out", StringComparison.Ordinal),
        CureAct.Rename => remedy.Contains($"mean {cure.Value}?", StringComparison.Ordinal),
        _ => Regex.IsMatch(remedy, $@"(?<![\w.-]){Regex.Escape(cure.Value)}(?!\w|\.\d)"),
    };
}
