-- What has been written into these tables stays as it was written.

create trigger history_keeps_its_rows before update on history
begin select raise(abort, 'history is append-only: add a row instead'); end;

create trigger history_keeps_all_rows before delete on history
begin select raise(abort, 'history is append-only: no row is deleted'); end;

create trigger revision_keeps_its_rows before update on revision
begin select raise(abort, 'a revision is never changed: add another'); end;

create trigger revision_keeps_all_rows before delete on revision
begin select raise(abort, 'a revision is never deleted'); end;

create trigger revision_file_keeps_its_rows before update on revision_file
begin select raise(abort, 'a revision is never changed: add another'); end;

create trigger revision_file_keeps_all_rows before delete on revision_file
begin select raise(abort, 'a revision is never deleted'); end;
