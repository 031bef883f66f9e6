using PlatformForge.Mutants;

// run.sh beside this file tells what can be asked.
if (args is ["child", .. var rest])
{
    return Child.Run(rest);
}

var asked = Asked.Of(args);
var trial = new Trial(asked.Folder);
switch (asked.Command)
{
    case "prepare":
        Work.Prepare(asked, trial);
        return 0;
    case "renew":
        Work.Renew(asked, trial);
        return 0;
    case "go":
        Work.Go(asked, trial);
        return 0;
    case "report":
        return Account.Print(asked, trial);
    case "all":
        Work.Prepare(asked, trial);
        Work.Go(asked, trial);
        return Account.Print(asked, trial);
    default:
        Console.Error.WriteLine("Known: prepare, renew, go, report, all; --rooms A,B --count N --seed S --minutes M --again --keys K,L --tests T,U --least "
            + "PERCENT --longest S --most S");
        return 2;
}
