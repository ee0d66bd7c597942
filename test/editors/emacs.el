;;; Opens a house in Emacs with eglot, breaks it, reads finding and hover.  Prints one line of JSON.  -*- lexical-binding: t -*-
;;; emacs --batch -l emacs.el   (not -Q: the packages of the system are found by its site files)
;;; Environment: HOUSE_NODE, HOUSE_SERVER, HOUSE_FILE, BREAK_FROM, BREAK_TO, FINDING, HOVER_AT.

(setq eglot-sync-connect 30 eglot-autoshutdown t eglot-events-buffer-size 0)
(require 'package)
(package-initialize)
(require 'eglot)
(require 'flymake)
(require 'json)
(require 'project)

(define-derived-mode house-mode prog-mode "House")
(add-to-list 'auto-mode-alist '("\\.house\\'" . house-mode))
(add-to-list 'eglot-server-programs
             `(house-mode . (,(getenv "HOUSE_NODE") ,(getenv "HOUSE_SERVER") "--stdio")))

(defun await (what condition)
  "Wait until CONDITION holds; end with an error that names WHAT when it does not within 30 seconds."
  (let ((end (+ (float-time) 30)))
    (while (and (not (funcall condition)) (< (float-time) end))
      (accept-process-output nil 0.05))
    (unless (funcall condition)
      (message "waited in vain: %s" what)
      (kill-emacs 1))))

(defun finding ()
  "The finding that the scenario is about, if it is shown."
  (seq-find (lambda (one) (string-match-p (regexp-quote (getenv "FINDING")) (flymake-diagnostic-text one)))
            (flymake-diagnostics)))

(with-current-buffer (find-file-noselect (getenv "HOUSE_FILE"))
  (let ((project-find-functions (list (lambda (folder) (cons 'transient folder)))))
    (apply #'eglot--connect (eglot--guess-contact)))
  (await "the server" #'eglot-managed-p)
  (flymake-mode 1)
  (goto-char (point-min))
  (search-forward (getenv "BREAK_FROM"))
  (replace-match (getenv "BREAK_TO") t t)
  ;; In batch nobody idles: changes are sent when asked for.
  (eglot--signal-textDocument/didChange)
  (await "the finding" (lambda () (flymake-start) (finding)))
  (goto-char (point-min))
  (search-forward (getenv "HOVER_AT"))
  (goto-char (match-beginning 0))
  (let* ((shown (jsonrpc-request (eglot--current-server-or-lose) :textDocument/hover
                                 (eglot--TextDocumentPositionParams)))
         (report `((message . ,(flymake-diagnostic-text (finding)))
                   (line . ,(progn (goto-char (flymake-diagnostic-beg (finding))) (thing-at-point 'line t)))
                   (hover . ,(plist-get (plist-get shown :contents) :value)))))
    (princ (json-encode report))
    (terpri))
  (set-buffer-modified-p nil)
  (eglot-shutdown (eglot-current-server)))
